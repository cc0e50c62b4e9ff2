import { expect, inject, it } from 'vitest'
import { killWhileEditing } from '../soak/kills.ts'
import { relaysOnDatabase } from '../soak/victims.ts'
import { freshDatabase } from './database.ts'

it('of two relays one is killed, three times over, while eight people edit: nothing that anybody saw is lost, and all come back on the other', { timeout: 180_000 }, async () => {
  const victim = await relaysOnDatabase(await freshDatabase(inject('databaseServerUrl')))
  try {
    const { kills, seen } = await killWhileEditing(victim, 3)
    expect(kills).toBe(3)
    expect(seen).toBeGreaterThan(100)
  } finally {
    await victim.close()
  }
})
