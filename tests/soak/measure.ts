import pg from 'pg'
import { PostgresStore } from '../../server/store/postgresStore.ts'
import { letIn, pause, until } from './kills.ts'
import type { SteadyPerson } from './steadyPerson.ts'
import { relaysOnDatabase } from './victims.ts'

export interface SharingFigures {
  /** From an edit to its being seen, in milliseconds: by people on the same relay, and on the other. */
  readonly seenHere: Spread
  readonly seenThere: Spread
  /** Updates kept a second by one relay's store, many rooms at once. */
  readonly updatesPerSecond: number
  /** Bytes of table and index a small update takes. */
  readonly bytesPerUpdate: number
}

interface Spread {
  readonly median: number
  readonly p99: number
}

const LONE_EDITS = 200
const ROOMS = 100
const UPDATES_A_ROOM = 100

/** What sharing a database costs: how much later the other relay's people see an edit, and how much one store keeps. */
export async function measureSharing(databaseUrl: string): Promise<SharingFigures> {
  const { seenHere, seenThere } = await measureSight(databaseUrl)
  return { seenHere, seenThere, ...(await measureStore(databaseUrl)) }
}

/** Eight people come to two relays in turn: one makes single edits, the others say when they see each. */
async function measureSight(databaseUrl: string): Promise<Pick<SharingFigures, 'seenHere' | 'seenThere'>> {
  const relays = await relaysOnDatabase(databaseUrl)
  const { people } = await letIn(relays.origin)
  try {
    await until(() => people.every((person) => person.isIn && relayOf(person) !== undefined), 'everybody is in')
    const [editor, ...watching] = people
    const here: number[] = []
    const there: number[] = []
    for (const person of watching) {
      const spread = relayOf(person) === relayOf(editor!) ? here : there
      const edits = person.doc.getMap<number>('edits')
      edits.observe(({ keysChanged }) => keysChanged.forEach((key) => spread.push(performance.now() - (edits.get(key ?? '') ?? NaN))))
    }
    for (let count = 0; count < LONE_EDITS; count++) {
      // The moment it was made is what it says.
      editor!.doc.getMap('edits').set(`one/${count}`, performance.now())
      await pause(25)
    }
    await until(() => watching.every(({ doc }) => doc.getMap('edits').size === LONE_EDITS), 'everybody has every edit')
    return { seenHere: spreadOf(here), seenThere: spreadOf(there) }
  } finally {
    people.forEach((person) => person.leave())
    await relays.close()
  }
}

/** The client id under which the relay that one is on speaks for itself. */
function relayOf({ provider }: SteadyPerson): number | undefined {
  return [...provider.awareness.getStates()].find(([, state]) => state.relay !== undefined)?.[0]
}

async function measureStore(databaseUrl: string): Promise<Pick<SharingFigures, 'updatesPerSecond' | 'bytesPerUpdate'>> {
  const store = await PostgresStore.open(databaseUrl)
  try {
    const jobs = Array.from({ length: ROOMS }, (_, index) => `measured-${index}`)
    for (const jobId of jobs) await store.createJob({ jobId, createdMs: 0, links: [], documents: [] })
    const update = new Uint8Array(60).fill(7)
    const startedMs = performance.now()
    await Promise.all(jobs.map(async (jobId) => {
      for (let count = 0; count < UPDATES_A_ROOM; count++) await store.append({ jobId, document: 'plan' }, update)
    }))
    const seconds = (performance.now() - startedMs) / 1_000
    return { updatesPerSecond: (ROOMS * UPDATES_A_ROOM) / seconds, bytesPerUpdate: await bytesPerUpdate(databaseUrl) }
  } finally {
    await store.close()
  }
}

async function bytesPerUpdate(databaseUrl: string): Promise<number> {
  const client = new pg.Client({ connectionString: databaseUrl })
  await client.connect()
  const { rows } = await client.query<{ bytes: string; updates: string }>(
    "SELECT pg_total_relation_size('updates') AS bytes, (SELECT count(*) FROM updates) AS updates")
  await client.end()
  return Number(rows[0]?.bytes) / Number(rows[0]?.updates)
}

function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b)
  return { median: sorted[Math.floor(sorted.length / 2)] ?? NaN, p99: sorted[Math.floor(sorted.length * 0.99)] ?? NaN }
}
