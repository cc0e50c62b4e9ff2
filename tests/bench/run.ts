/**
 * `npm run bench` measures and prints a table; `npm run bench -- --json FILE` also writes the rows;
 * `npm run bench -- --only predict` runs one part, `npm run bench:relay -- --scenario '30 who'` of the relay's only what
 * has that in its name. The machine's noise is in the figures: compare within one run.
 */
import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import type { BenchRow } from './row.ts'

const { values } = parseArgs({ options: { json: { type: 'string' }, only: { type: 'string' }, scenario: { type: 'string' } } })

const parts: Readonly<Record<string, () => Promise<BenchRow[]>>> = {
  predict: async () => (await import('./predict.ts')).predictRows(),
  ask: async () => (await import('./ask.ts')).askRows(),
  picture: async () => (await import('./picture.ts')).pictureRows(),
  frame: async () => (await import('./frame.ts')).frameRows(),
  board: async () => (await import('./board.ts')).boardRows(),
  relay: async () => (await import('./relay.ts')).relayRows(values.scenario),
  attacks: async () => (await import('./attacks.ts')).attackRows(),
  durability: async () => (await import('./durability.ts')).durabilityRows(),
}

const rows: BenchRow[] = []
for (const [name, measure] of Object.entries(parts)) {
  if (values.only && values.only !== name) continue
  console.error(`measuring ${name} …`)
  rows.push(...(await measure()))
}

const width = Math.max(...rows.map((row) => row.name.length))
for (const row of rows) {
  const target = row.target === null ? '' : `target ${row.better === 'lower' ? '<' : '>'} ${row.target}`
  console.log(`${row.name.padEnd(width)}  ${row.value.toPrecision(4).padStart(9)} ${row.unit.padEnd(24)} ${target.padEnd(14)} ${row.note}`)
}
if (values.json) writeFileSync(values.json, JSON.stringify(rows, null, 2))
process.exit(0)
