import { expect, inject, it } from 'vitest'
import { converge } from '../soak/convergence.ts'
import { freshDatabase } from './database.ts'

const RUNS = 20
/** So many at once: each mostly waits. */
const TOGETHER = 4

it(`ten people on two relays, on wires that lose, double and reorder, come to the same document in ${RUNS} runs`, { timeout: 240_000 }, async () => {
  const url = await freshDatabase(inject('databaseServerUrl'))
  for (let first = 1; first <= RUNS; first += TOGETHER) {
    const runs = Array.from({ length: TOGETHER }, (_, index) => converge(first + index, url))
    for (const { edits, restarts, bytes } of await Promise.all(runs)) {
      expect(edits).toBeGreaterThan(250)
      expect(restarts).toBe(3)
      expect(bytes).toBeGreaterThan(1_000)
    }
  }
})
