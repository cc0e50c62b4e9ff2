import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { SqliteStore } from '../../server/store/sqliteStore.ts'
import type { Durability } from '../../server/store/sqliteDatabase.ts'
import { median, type BenchRow } from './row.ts'

const APPENDS = 300
const KEY = { jobId: 'job', document: 'plan' } as const

/** What a commit costs that outlives the process, and one that outlives the machine's power: appends one after another. */
export async function durabilityRows(): Promise<BenchRow[]> {
  const process = await medianAppendMs('process')
  const power = await medianAppendMs('power')
  return [
    { name: 'store, one append, DURABILITY=process', value: process, unit: 'ms', target: null, better: 'lower', note: 'median; paced, so that none waits for company' },
    { name: 'store, one append, DURABILITY=power', value: power, unit: 'ms', target: null, better: 'lower', note: `${(power / process).toFixed(1)} times the other; the disk's own speed` },
  ]
}

async function medianAppendMs(durability: Durability): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'halfstop-bench-durability-'))
  const store = new SqliteStore(join(folder, 'store.db'), durability)
  try {
    await store.createJob({ jobId: 'job', createdMs: 0, links: [], documents: [] })
    const times: number[] = []
    for (let count = 0; count < APPENDS; count++) {
      await new Promise((resolve) => setTimeout(resolve, 6))
      const startedMs = performance.now()
      await store.append(KEY, new Uint8Array(100).fill(count))
      times.push(performance.now() - startedMs)
    }
    return median(times)
  } finally {
    await store.close()
    rmSync(folder, { recursive: true, force: true })
  }
}
