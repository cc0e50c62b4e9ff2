import { coldJoinRows } from './coldJoin.ts'
import { measureCrowd, warmUp, type Crowd, type Measured } from './crowd.ts'
import { roomMemoryRows } from './roomMemory.ts'
import { median, type BenchRow } from './row.ts'
import { isHocuspocusInstalled, isStockServerInstalled, startHocuspocus, startOurs, startStock, type MeasuredServer } from './servers.ts'

const INSTALL = 'npm install --prefix tests/bench --no-package-lock'
const TURNS = 3
/** Not counted: a server's code is compiled as it runs, each scenario runs other code, and relays run for days. */
const WARMING_TURNS = 1

interface Scenario extends Crowd {
  readonly name: string
  /** Least deliveries a CPU second over the stock server's, and over Hocuspocus's. */
  readonly timesStock: number
  readonly timesHocuspocus: number | null
  readonly p99Ms: number | null
  /** Most of Hocuspocus's p99. */
  readonly shareOfHocuspocusP99: number | null
}

const SCENARIOS: readonly Scenario[] = [
  {
    name: '1 room of 100 who edit and point', rooms: 1, people: 100, hands: 'edit and point', editEveryMs: 100,
    timesStock: 6, timesHocuspocus: 1, p99Ms: null, shareOfHocuspocusP99: 1 / 3,
  },
  {
    name: '1 room of 30 who edit and point', rooms: 1, people: 30, hands: 'edit and point', editEveryMs: 100,
    timesStock: 2, timesHocuspocus: null, p99Ms: 60, shareOfHocuspocusP99: null,
  },
  {
    name: '300 rooms of 3 who edit', rooms: 300, people: 3, hands: 'edit', editEveryMs: 500,
    timesStock: 1, timesHocuspocus: null, p99Ms: 50, shareOfHocuspocusP99: null,
  },
]

/**
 * The relay beside the stock y-websocket server and Hocuspocus, taking turns in one run: medians of three. Each server is
 * a process of its own, started once and equally warm; all people share this one.
 *
 * @param part measure only what has this in its name
 */
export async function relayRows(part = ''): Promise<BenchRow[]> {
  const rows: BenchRow[] = []
  const scenarios = SCENARIOS.filter(({ name }) => name.includes(part))
  if (scenarios.length > 0) rows.push(...(await crowdRows(scenarios)))
  if ('cold join'.includes(part)) rows.push(...(await coldJoinRows()))
  if ('memory'.includes(part)) rows.push(...(await roomMemoryRows()))
  return rows
}

async function crowdRows(scenarios: readonly Scenario[]): Promise<BenchRow[]> {
  const servers: MeasuredServer[] = [await startOurs()]
  if (isStockServerInstalled()) servers.push(await startStock())
  if (isHocuspocusInstalled()) servers.push(await startHocuspocus())
  if (servers.length < 3) console.error(`\n*** NOT ALL RIVALS ARE INSTALLED, SO NOT ALL IS COMPARED. Install them with:\n***   ${INSTALL}\n`)
  try {
    for (const server of servers) await warmUp(server)
    const rows: BenchRow[] = []
    for (const scenario of scenarios) rows.push(...(await scenarioRows(scenario, servers)))
    return rows
  } finally {
    await Promise.all(servers.map((server) => server.stop()))
  }
}

interface Figures {
  readonly p50Ms: number
  readonly p99Ms: number
  readonly undelivered: number
  readonly expected: number
  readonly perCpuSecond: number
}

async function scenarioRows(scenario: Scenario, servers: readonly MeasuredServer[]): Promise<BenchRow[]> {
  const turns = new Map<string, Figures[]>(servers.map(({ name }) => [name, []]))
  for (let turn = -WARMING_TURNS; turn < TURNS; turn++) {
    for (const server of servers) {
      const figures = figuresOf(await measureCrowd(server, scenario))
      console.error(`  ${scenario.name}, ${server.name}${turn < 0 ? ', to warm up' : ''}: ${JSON.stringify(figures)}`)
      if (turn >= 0) turns.get(server.name)?.push(figures)
    }
  }
  const of = (server: string, figure: keyof Figures) => median((turns.get(server) ?? []).map((figures) => figures[figure]))
  const row = (name: string, figure: keyof Figures, unit: string, target: number | null, better: BenchRow['better'], digits: number): BenchRow => ({
    name: `relay, ${scenario.name}: ${name}`, value: of('ours', figure), unit, target, better,
    note: servers.slice(1).map((server) => `${server.name} ${of(server.name, figure).toFixed(digits)}`).join(', '),
  })
  const times = (server: string, target: number | null): BenchRow[] => turns.get(server) === undefined ? [] : [{
    name: `relay, ${scenario.name}: deliveries per CPU second over ${server}`, value: of('ours', 'perCpuSecond') / of(server, 'perCpuSecond'),
    unit: 'times', target, better: 'higher', note: '',
  }]
  const share: BenchRow[] = turns.get('Hocuspocus') === undefined ? [] : [{
    name: `relay, ${scenario.name}: p99 over Hocuspocus's`, value: of('ours', 'p99Ms') / of('Hocuspocus', 'p99Ms'), unit: 'times',
    target: scenario.shareOfHocuspocusP99, better: 'lower', note: '',
  }]
  return [
    row('edit to other screen, p50', 'p50Ms', 'ms', null, 'lower', 1),
    row('edit to other screen, p99', 'p99Ms', 'ms', scenario.p99Ms, 'lower', 1),
    row('undelivered 4 s after the last edit', 'undelivered', 'deliveries', 1, 'lower', 0),
    row('deliveries', 'perCpuSecond', 'per relay CPU second', null, 'higher', 0),
    ...times('stock', scenario.timesStock), ...times('Hocuspocus', scenario.timesHocuspocus), ...share,
  ]
}

function figuresOf({ latenciesMs, expected, cpuSeconds }: Measured): Figures {
  const sorted = Float64Array.from(latenciesMs).sort()
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN
  return { p50Ms: at(0.5), p99Ms: at(0.99), expected, undelivered: expected - sorted.length, perCpuSecond: sorted.length / cpuSeconds }
}
