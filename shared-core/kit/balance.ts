import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { MOST_CIRCUIT_PERCENT, percentOfBreaker } from '../predict/supply.ts'
import { plugsOf, type Appliances, type Plug } from './circuits.ts'

export interface PlugMove {
  readonly plug: Plug
  readonly toCircuitId: string
}

export interface Balance {
  /** The plugs to change, heads before appliances. */
  readonly moves: readonly PlugMove[]
  readonly worstPercent: number
  readonly worstPercentBefore: number
  /** Heads that would share a circuit with what wants one to itself. */
  readonly sharing: number
  /** Whether every way was weighed; past a bound the best found so far is given. */
  readonly isExact: boolean
}

/** Ways to plug that are looked at before the search gives the best it has. */
const MOST_STEPS = 400_000
const SAME_PERCENT = 1e-9

/**
 * Which plug goes on which circuit so that the worst circuit carries the least, as if everything were on at once and all
 * heads recycled together. First as few as can be past the usual share of a breaker, then appliances apart from heads,
 * then the least on the worst circuit, then the fewest plugs to change. Null for a room without circuits or without plugs.
 */
export function balancePlugs(plan: Plan, look: Look, appliances: Appliances): Balance | null {
  const circuits = Object.entries(plan.room.circuits).map(([id, { breakerAmps }]) => ({ id, breakerAmps }))
  const plugs = [...plugsOf(plan, look, appliances)].sort((a, b) => b.amps - a.amps || (a.id < b.id ? -1 : 1))
  if (circuits.length === 0 || plugs.length === 0) return null
  const search = new Search(circuits, plugs)
  search.from(0)
  const moves = plugs.map((plug, index) => ({ plug, toCircuitId: circuits[search.best[index]!]!.id }))
    .filter(({ plug, toCircuitId }) => !plug.isPlugged || plug.circuitId !== toCircuitId)
  const loadOf = (circuitId: string) => plugs.filter((plug) => plug.circuitId === circuitId)
  return {
    moves: [...moves].sort((a, b) => (a.plug.kind === b.plug.kind ? a.plug.label.localeCompare(b.plug.label, 'en') : a.plug.kind === 'head' ? -1 : 1)),
    worstPercent: search.leastCost.worst,
    worstPercentBefore: Math.max(...circuits.map(({ id, breakerAmps }) => percentOfBreaker(loadOf(id), breakerAmps))),
    sharing: search.leastCost.sharing,
    isExact: search.steps <= MOST_STEPS,
  }
}

interface Cost {
  readonly over: number
  readonly sharing: number
  readonly worst: number
  readonly moves: number
}

/** Depth first over the plugs, the largest first; a branch that is already no better than the best is left. */
class Search {
  best: readonly number[] = []
  leastCost: Cost = { over: Infinity, sharing: Infinity, worst: Infinity, moves: Infinity }
  steps = 0
  private readonly taken: number[] = []

  constructor(
    private readonly circuits: readonly { readonly id: string; readonly breakerAmps: number }[],
    private readonly plugs: readonly Plug[],
  ) {}

  from(index: number): void {
    if (this.steps++ > MOST_STEPS && this.best.length > 0) return
    const cost = this.cost()
    // Every part of the cost only grows as more is plugged in.
    if (!isLess(cost, this.leastCost)) return
    if (index === this.plugs.length) {
      this.best = [...this.taken]
      this.leastCost = cost
      return
    }
    for (const circuit of this.byRoom(index)) {
      this.taken.push(circuit)
      this.from(index + 1)
      this.taken.pop()
    }
  }

  /** Where it would weigh least comes first, so that a good way is found early. */
  private byRoom(index: number): readonly number[] {
    const after = (circuit: number) =>
      percentOfBreaker([...this.on(circuit), this.plugs[index]!], this.circuits[circuit]!.breakerAmps)
    return this.circuits.map((_, circuit) => circuit).sort((a, b) => after(a) - after(b))
  }

  private on(circuit: number): readonly Plug[] {
    return this.plugs.filter((_, index) => this.taken[index] === circuit)
  }

  private cost(): Cost {
    const loads = this.circuits.map((_, circuit) => this.on(circuit))
    const percents = loads.map((load, circuit) => percentOfBreaker(load, this.circuits[circuit]!.breakerAmps))
    return {
      over: percents.filter((percent) => percent > MOST_CIRCUIT_PERCENT).length,
      sharing: loads.reduce((sum, load) => sum + (load.some(({ apart }) => apart) ? load.filter(({ kind }) => kind === 'head').length : 0), 0),
      worst: Math.max(0, ...percents),
      moves: this.taken.filter((circuit, index) => {
        const { isPlugged, circuitId } = this.plugs[index]!
        return !isPlugged || circuitId !== this.circuits[circuit]!.id
      }).length,
    }
  }
}

function isLess(one: Cost, other: Cost): boolean {
  if (one.over !== other.over) return one.over < other.over
  if (one.sharing !== other.sharing) return one.sharing < other.sharing
  if (Math.abs(one.worst - other.worst) > SAME_PERCENT) return one.worst < other.worst
  return one.moves < other.moves
}
