import { measureCrowd, warmUp, type Hands, type Measured } from './crowd.ts'
import type { BenchRow } from './row.ts'
import { isStockServerInstalled, startOurs, startStock, type MeasuredServer } from './servers.ts'

const INSTALL = 'npm install --prefix tests/bench --no-package-lock --omit=optional --ignore-scripts'

interface Crowd {
  readonly people: number
  readonly hands: Hands
  /** Turns each server takes; their figures are put together. */
  readonly turns: number
  /** Deliveries per CPU second over the stock server's. */
  readonly targetTimes: number | null
}

const CROWDS: readonly Crowd[] = [
  { people: 3, hands: 'edit', turns: 1, targetTimes: null },
  { people: 10, hands: 'edit', turns: 1, targetTimes: null },
  { people: 30, hands: 'edit', turns: 2, targetTimes: 2 },
  { people: 30, hands: 'edit and point', turns: 2, targetTimes: 2 },
]

/**
 * The relay with 3, 10 and 30 people in one room who each make 10 edits a second, and with 30 who also move their
 * pointers 20 times a second, taking turns with the stock y-websocket server. Each server is a process of its own,
 * started once and equally warm; all people share this one.
 */
export async function relayRows(): Promise<BenchRow[]> {
  if (!isStockServerInstalled()) console.error(`\n*** THE STOCK SERVER IS NOT INSTALLED, SO NOTHING IS COMPARED. Install it with:\n***   ${INSTALL}\n`)
  const ours = await startOurs()
  const stock = isStockServerInstalled() ? await startStock() : null
  try {
    await Promise.all([warmUp(ours), stock === null ? null : warmUp(stock)])
    const rows: BenchRow[] = []
    for (const crowd of CROWDS) rows.push(...(await measureInTurns(crowd, ours, stock)))
    return rows
  } finally {
    await Promise.all([ours.stop(), stock?.stop()])
  }
}

async function measureInTurns(crowd: Crowd, ours: MeasuredServer, stock: MeasuredServer | null): Promise<BenchRow[]> {
  const oursTurns: Measured[] = []
  const stockTurns: Measured[] = []
  for (let turn = 0; turn < crowd.turns; turn++) {
    oursTurns.push(await measureCrowd(ours, crowd.people, crowd.hands))
    if (stock !== null) stockTurns.push(await measureCrowd(stock, crowd.people, crowd.hands))
  }
  return rowsOf(crowd, figuresOf(oursTurns), stock === null ? null : figuresOf(stockTurns))
}

interface Figures {
  readonly p50Ms: number
  readonly p99Ms: number
  readonly delivered: number
  readonly undelivered: number
  readonly perCpuSecond: number
}

function figuresOf(turns: readonly Measured[]): Figures {
  const latenciesMs = turns.flatMap((turn) => turn.latenciesMs).sort((a, b) => a - b)
  const total = (figure: (turn: Measured) => number) => turns.reduce((sum, turn) => sum + figure(turn), 0)
  const delivered = latenciesMs.length
  return {
    p50Ms: percentile(latenciesMs, 0.5), p99Ms: percentile(latenciesMs, 0.99), delivered,
    undelivered: total((turn) => turn.expected) - delivered, perCpuSecond: delivered / total((turn) => turn.cpuSeconds),
  }
}

function rowsOf({ people, hands, targetTimes }: Crowd, ours: Figures, stock: Figures | null): BenchRow[] {
  const beside = (figure: (of: Figures) => number, digits: number) =>
    stock === null ? 'stock server not installed' : `stock server ${figure(stock).toFixed(digits)}`
  const row = (name: string, value: number, unit: string, target: number | null, better: BenchRow['better'], note: string): BenchRow =>
    ({ name: `relay, ${people} people ${hands}: ${name}`, value, unit, target, better, note })
  return [
    row('edit to other screen, p50', ours.p50Ms, 'ms', null, 'lower', `edit made to edit read; ${beside((of) => of.p50Ms, 1)}`),
    row('edit to other screen, p99', ours.p99Ms, 'ms', 60, 'lower', `edit made to edit read; ${beside((of) => of.p99Ms, 1)}`),
    row('edits undelivered', ours.undelivered, 'deliveries', null, 'lower', `of ${ours.delivered + ours.undelivered}; ${beside((of) => of.undelivered, 0)}`),
    row('deliveries', ours.perCpuSecond, 'per relay CPU second', null, 'higher', `ours kept in SQLite; ${beside((of) => of.perCpuSecond, 0)}, in memory`),
    ...(stock === null ? [] : [row('deliveries per CPU second over stock', ours.perCpuSecond / stock.perCpuSecond,
      'times', targetTimes, 'higher', 'y-websocket 2.1.0 in memory with ws 8.23, same run')]),
  ]
}

function percentile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN
}
