import { expect, it } from 'vitest'
import { killWhileEditing } from '../soak/kills.ts'
import { relayOnFile } from '../soak/victims.ts'

it('a relay killed three times while eight people edit has lost nothing that anybody saw, and nothing in between', { timeout: 180_000 }, async () => {
  const victim = await relayOnFile()
  try {
    const { kills, seen } = await killWhileEditing(victim, 3)
    expect(kills).toBe(3)
    expect(seen).toBeGreaterThan(100)
  } finally {
    await victim.close()
  }
})
