import { spawn, type ChildProcess } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { measureCrowd, pause, warmUp, type Crowd } from './crowd.ts'
import { median, type BenchRow } from './row.ts'
import { startOurs, type MeasuredServer, type Place } from './servers.ts'

const ATTACKERS = fileURLToPath(new URL('attackers.ts', import.meta.url))
const BYSTANDERS: Crowd = { rooms: 1, people: 10, hands: 'edit and point', editEveryMs: 100 }

interface Attack {
  readonly kind: string
  readonly attackers: number
  readonly connectionsEach?: number
  /** Elsewhere: in so many jobs of their own. Otherwise in the bystanders' own room. */
  readonly jobs?: number
}

const ATTACKS: readonly Attack[] = [
  { kind: 'random bytes', attackers: 3 },
  { kind: 'fifty megabytes', attackers: 2 },
  { kind: 'presence flood', attackers: 3 },
  { kind: 'idle sockets', attackers: 9, connectionsEach: 21, jobs: 11 },
  { kind: 'deaf readers', attackers: 5 },
  { kind: 'half-open handshakes', attackers: 1, connectionsEach: 300 },
  { kind: 'document bomb', attackers: 2, jobs: 1 },
]

/** What ten people who edit and point feel of an attack, and how much of the relay's memory it leaves in use. */
export async function attackRows(): Promise<BenchRow[]> {
  const relay = await startOurs()
  try {
    await warmUp(relay)
    const quiet: number[] = []
    for (let turn = 0; turn < 3; turn++) quiet.push(await bystandersP99(relay))
    const quietMs = median(quiet)
    const rows: BenchRow[] = []
    for (const attack of ATTACKS) rows.push(...(await rowsUnder(relay, attack, quietMs)))
    return rows
  } finally {
    await relay.stop()
  }
}

async function rowsUnder(relay: MeasuredServer, attack: Attack, quietMs: number): Promise<BenchRow[]> {
  const before = await relay.memory()
  let attackers: ChildProcess | null = null
  const elsewhere: Place[] = []
  for (let job = 0; job < (attack.jobs ?? 0); job++) elsewhere.push(...(await relay.places(attack.attackers)))
  if (elsewhere.length > 0) attackers = await unleash(attack, elsewhere)
  let peakBytes = 0
  const watch = setInterval(() => { peakBytes = Math.max(peakBytes, residentBytes(relay.pid)) }, 100)
  const p99Ms = await bystandersP99({
    ...relay,
    async places(people) {
      if (attackers !== null) return relay.places(people)
      const places = await relay.places(people + attack.attackers)
      attackers = await unleash(attack, places.slice(people))
      return places.slice(0, people)
    },
  })
  clearInterval(watch)
  ;(attackers as ChildProcess | null)?.kill('SIGKILL')
  await pause(3_000)
  const grownMb = ((await relay.memory()).usedBytes - before.usedBytes) / 1e6
  const peak = `resident at most ${((peakBytes - before.residentBytes) / 1e6).toFixed(0)} MB above before`
  return [
    { name: `relay under ${attack.kind}: bystanders' p99`, value: p99Ms, unit: 'ms', target: 2 * quietMs, better: 'lower', note: `quiet ${quietMs.toFixed(1)}` },
    { name: `relay after ${attack.kind}: memory grown`, value: grownMb, unit: 'MB', target: 20, better: 'lower', note: peak },
  ]
}

async function unleash({ kind, connectionsEach }: Attack, places: readonly Place[]): Promise<ChildProcess> {
  const child = spawn(process.execPath, ['--import', 'tsx', ATTACKERS, kind, String(connectionsEach ?? 1)], { stdio: ['pipe', 'inherit', 'inherit'] })
  child.stdin?.end(JSON.stringify(places.map(({ url, headers }) => ({ url, headers }))))
  // Until it has been compiled and has got to work.
  await pause(2_000)
  return child
}

async function bystandersP99(server: MeasuredServer): Promise<number> {
  const { latenciesMs, expected } = await measureCrowd(server, BYSTANDERS)
  if (latenciesMs.length < expected) console.error(`  ${expected - latenciesMs.length} of ${expected} edits did not arrive`)
  const sorted = Float64Array.from(latenciesMs).sort()
  return sorted[Math.floor(sorted.length * 0.99)] ?? Number.NaN
}

function residentBytes(pid: number): number {
  return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) * 1_024
}
