import type { Prediction } from '../predict/prediction.ts'
import type { Outcome } from './answer.ts'
import { boundedLeastSquares } from './boundedLeastSquares.ts'
import { changed, lookOf, type Draft } from './draft.ts'
import { residuals, type ClearChannels } from './judge.ts'
import type { LookModel } from './lookModel.ts'
import { modelOf } from './modelOf.ts'
import { outcomesOf, totalShortfall } from './outcomes.ts'
import { linearStart } from './linearStart.ts'
import { knobsOf, rangeOf, timesOf, turned, type Knob, type Reach } from './powerKnobs.ts'
import { onTheSteps } from './powerSteps.ts'
import type { Task } from './task.ts'
import type { Want } from './want.ts'

/** Predicting again corrects for the drift of the flash's colour with its power; it is small, so this converges at once. */
const ROUNDS = 3
const SETTLED_STOPS = 0.002
/** A light that no want depends on stays; this pull is far too weak to be seen in a level. */
const STAY_WEIGHT = 1e-3
/** A light that the wants are not about is turned so much less readily than those they are about. */
const LOATH = 20
/** A light with a smaller share of an area is not looked to for its colour. */
const LEAST_SHARE = 0.002
const SAYS_A_LEVEL: readonly Want['kind'][] = ['area-level', 'light-level', 'area-gel', 'area-colour']
const MOST_ITERATIONS = 25
const MOST_STEP_STOPS = 3

export interface PowerSolution {
  readonly draft: Draft
  readonly prediction: Prediction
  readonly outcomes: readonly Outcome[]
  /** Of all aims together, weighed as stops; 0 when all is met. */
  readonly shortfall: number
}

/**
 * The powers at which a draft comes nearest to what is wanted. With as few lights changed as will do: first those the
 * wants are about, then also the strongest where a level is wanted, then all that make a wanted colour.
 */
export function solvePowers(task: Task, draft: Draft, reach: Reach = 'heads'): PowerSolution {
  const clear = task.clearChannels(draft)
  const first = judged(task, draft, clear)
  const model = modelOf(first.prediction, lookOf(draft).meter)
  let best: PowerSolution | null = null
  for (const freeIds of freedInTurn(task, draft, model)) {
    const solution = solveFor(task, draft, knobsOf(task, draft, freeIds), clear, reach)
    if (!best || solution.shortfall < best.shortfall - 1e-3) best = solution
    if (best.shortfall === 0) return best
  }
  return best && best.shortfall <= first.shortfall ? best : first
}

/**
 * Lights that may be changed, in growing sets. One want about the paper must not turn the key down, so lights that are
 * only strong elsewhere are left alone, but where a colour is wanted of an area: it is what all its lights make together.
 */
function freedInTurn(task: Task, draft: Draft, model: LookModel): ReadonlySet<string>[] {
  const look = lookOf(draft)
  const about = new Set<string>()
  const strongest = new Set<string>()
  const colouring = new Set<string>()
  for (const { want, lightId } of task.aims) {
    if (lightId !== null) [lightId, ...(draft.helpers.get(lightId) ?? [])].forEach((id) => about.add(id))
    if (want.kind === 'white-behind') model.lightIds.filter((id) => look.lights[id]?.plane === 'background').forEach((id) => about.add(id))
    if (want.kind === 'area-level') {
      const most = model.strongestAt(want.areaId)
      if (most !== null) strongest.add(most)
    }
    if (want.kind !== 'area-colour' && want.kind !== 'reads-true') continue
    const matters = (id: string): boolean => model.shareAt(want.areaId, id) > LEAST_SHARE
    const isCause = (id: string): boolean => want.kind === 'area-colour' || (look.lights[id]?.gelIds.length ?? 0) > 0
    model.lightIds.filter((id) => matters(id) && isCause(id)).forEach((id) => colouring.add(id))
  }
  // As much is said as there are lights: nothing is left to spare.
  const isAllSaid = task.aims.filter(({ want }) => SAYS_A_LEVEL.includes(want.kind)).length >= model.lightIds.length
  if (isAllSaid) return [new Set(model.lightIds)]
  const sets = [about, new Set([...about, ...strongest]), new Set([...about, ...strongest, ...colouring])]
  return sets.filter((set, i) => set.size > 0 && set.size > (sets[i - 1]?.size ?? 0))
}

function solveFor(task: Task, draft: Draft, knobs: readonly Knob[], clear: ClearChannels, reach: Reach): PowerSolution {
  let now = draft
  let total = knobs.map(() => 0)
  for (let round = 0; round < ROUNDS; round++) {
    const model = modelOf(task.predict(now), lookOf(now).meter)
    const lens = new Weighing(task, now, knobs, model, clear, total)
    const ranges = knobs.map((knob) => rangeOf(knob, now, reach))
    const starts = [knobs.map((_, i) => within(0, ranges[i]!)), ...(round === 0 ? [linearStart(task, now, knobs, model, ranges)] : [])]
    const start = starts.reduce((best, each) => (lens.cost(each) < lens.cost(best) ? each : best))
    const found = descend(lens, start, ranges)
    now = changed(now, knobs.flatMap((knob, i) => (found[i] === 0 ? [] : turned(knob, now, found[i]!))))
    total = total.map((stops, i) => stops + found[i]!)
    if (Math.max(0, ...found.map(Math.abs)) < SETTLED_STOPS) break
  }
  return reach === 'anything' ? judged(task, now, clear) : onTheSteps(task, now, knobs, clear, (each) => judged(task, each, clear))
}

function judged(task: Task, draft: Draft, clear: ClearChannels): PowerSolution {
  const prediction = task.predict(draft)
  const outcomes = outcomesOf(task.aims, draft, prediction, clear)
  return { draft, prediction, outcomes, shortfall: totalShortfall(task.aims, outcomes, draft) }
}

interface Range { readonly lower: number; readonly upper: number }

const within = (stops: number, { lower, upper }: Range): number => Math.min(Math.max(stops, lower), upper)

/** What the knobs do to what is wanted, by the model of one prediction. */
class Weighing {
  /** How little each knob wants to be turned. */
  private readonly stays: readonly number[]

  constructor(
    private readonly task: Task, private readonly draft: Draft, private readonly knobs: readonly Knob[],
    private readonly model: LookModel, private readonly clear: ClearChannels, private readonly turnedBefore: readonly number[],
  ) {
    const about = new Set(task.aims.flatMap(({ lightId }) => lightId ?? []))
    this.stays = knobs.map(({ lights }) => (about.size === 0 || lights.some(({ id }) => about.has(id)) ? STAY_WEIGHT : LOATH * STAY_WEIGHT))
  }

  residuals(stops: readonly number[]): number[] {
    const readings = this.model.at(timesOf(this.model, this.knobs, stops))
    const wanted = this.task.aims.flatMap((aim) => residuals(aim, readings, this.draft, this.clear))
    return [...wanted, ...stops.map((each, i) => this.stays[i]! * (each + this.turnedBefore[i]!))]
  }

  cost(stops: readonly number[]): number {
    return this.residuals(stops).reduce((sum, each) => sum + each * each, 0)
  }
}

/** Gauss and Newton's way down within bounds, each step a bounded least squares of the slopes; shortened while it fails. */
function descend(lens: Weighing, start: readonly number[], ranges: readonly Range[]): number[] {
  let at = [...start]
  let here = lens.residuals(at)
  let cost = squares(here)
  for (let iteration = 0; iteration < MOST_ITERATIONS && at.length > 0; iteration++) {
    const slopes = at.map((_, i) => slopeOf(lens, at, here, i, ranges[i]!))
    const matrix = here.map((_, row) => slopes.map((slope) => slope[row]!))
    const lower = at.map((stops, i) => Math.max(ranges[i]!.lower - stops, -MOST_STEP_STOPS))
    const upper = at.map((stops, i) => Math.min(ranges[i]!.upper - stops, MOST_STEP_STOPS))
    const step = boundedLeastSquares(matrix, here.map((value) => -value), lower, upper)
    let isBetter = false
    for (let share = 1; share > 0.01 && !isBetter; share /= 2) {
      const next = at.map((stops, i) => within(stops + share * step[i]!, ranges[i]!))
      const there = lens.residuals(next)
      isBetter = squares(there) < cost
      if (isBetter) [at, here, cost] = [next, there, squares(there)]
    }
    if (!isBetter || Math.max(...step.map(Math.abs)) < 1e-4) break
  }
  return at
}

function slopeOf(lens: Weighing, at: readonly number[], here: readonly number[], i: number, { upper }: Range): number[] {
  const by = at[i]! + 1e-4 > upper ? -1e-4 : 1e-4
  const there = lens.residuals(at.map((stops, k) => (k === i ? stops + by : stops)))
  return there.map((value, row) => (value - here[row]!) / by)
}

const squares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0)
