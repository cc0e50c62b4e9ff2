import { stopsFromTimes } from '../../arithmetic/portable.ts'
import type { Prediction } from '../../predict/prediction.ts'
import type { Limit, WayKind } from '../answer.ts'
import { lightOf, lookOf, type Draft } from '../draft.ts'
import { placeLimit, type Excess } from '../limits.ts'
import type { PowerSolution } from '../powers.ts'
import type { Task } from '../task.ts'
import { MARGIN_STOPS } from '../want.ts'

/** What every kind of way starts from. */
export interface Trial {
  readonly task: Task
  /** The plan as it is. */
  readonly original: Draft
  readonly from: Prediction
  /** With what was plainly said already done: sheets, aperture, ISO. */
  readonly base: Draft
  readonly powers: PowerSolution
  /** Lights that would have to be set past their range; worst first, none when powers alone do. */
  readonly excesses: readonly Excess[]
}

/** One way as it was tried, with what stopped it from going further. */
export interface Tried {
  readonly by: WayKind
  readonly title: string
  readonly solution: PowerSolution
}

export interface TriedWays {
  readonly best: Tried | null
  readonly limits: readonly Limit[]
}

export const NOT_TRIED: TriedWays = { best: null, limits: [] }

/**
 * How much more (positive) a light would have to give than its head has with something in hand, in stops; for a light
 * that is too strong, how much less (negative).
 */
export function lacking(excess: Excess, draft: Draft): number {
  const light = lightOf(draft, excess.lightId)
  const head = draft.plan.heads[light.headId]!
  return excess.stops > 0
    ? stopsFromTimes(light.energyJoules / head.fullEnergyJoules) + MARGIN_STOPS
    : stopsFromTimes(light.energyJoules / head.lowestEnergyJoules) - MARGIN_STOPS
}

/** Whether every light that was changed keeps something in hand at both ends. */
export function hasMargin(trial: Trial, { draft, prediction }: PowerSolution): boolean {
  return prediction.lights.every((light) => {
    if (!light.on || lookOf(trial.original).lights[light.id] === lookOf(draft).lights[light.id]) return true
    return Math.min(light.stopsInHand, light.stopsAboveLowest) >= MARGIN_STOPS - 0.01
  })
}

/** What keeps a light from standing where a draft has it; empty when nothing does that did not before. */
export function inTheWayOf(lightId: string, trial: Trial, prediction: Prediction): Limit[] {
  const known = new Set(trial.from.snags.map(({ key }) => key))
  return prediction.snags.flatMap((snag) => {
    if (known.has(snag.key) || !snag.about.includes(lightId)) return []
    return placeLimit(snag) ?? []
  })
}

/** The better of two: one that meets all, then with something in hand, then nearer to what is wanted. */
export function better(trial: Trial, a: Tried | null, b: Tried): Tried {
  if (!a) return b
  if (Math.abs(a.solution.shortfall - b.solution.shortfall) > 1e-6) return a.solution.shortfall < b.solution.shortfall ? a : b
  return !hasMargin(trial, a.solution) && hasMargin(trial, b.solution) ? b : a
}

/** Letters of lights: "C", "B and C". */
export function lettersOf(lightIds: readonly string[], draft: Draft): string {
  return lightIds.map((id) => lightOf(draft, id).letter).sort().join(' and ')
}
