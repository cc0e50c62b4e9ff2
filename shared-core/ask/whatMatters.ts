import { applyEdit, type PlanEdit } from '../plan/edit.ts'
import { formatLength, METRES_PER_INCH, type Units } from '../plan/entry/length.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import type { AreaId, Prediction } from '../predict/prediction.ts'
import { driftsOfLook, type MeasureKind, type MeasureOfThing, type ThingKind, type Unit } from './driftMeasures.ts'
import { driftScore, type FirstToGo } from './driftScore.ts'

/** Near enough to the threshold: nobody rigs to a tenth of a tolerance. */
const GOOD_WITHIN = 0.07
const MOST_TRIES = 5
const FIRST_TRY_SHARE = 1 / 8

/** How far a measure may drift one way. */
export interface DriftEnd {
  /** In the measure's unit, above 0. */
  readonly amount: number
  /** True when even the farthest that was tried shows nothing: "more than". */
  readonly isMore: boolean
  /** What would show first. */
  readonly first: { readonly areaId: AreaId; readonly label: string; readonly by: FirstToGo['by'] } | null
}

export interface Drift {
  readonly measure: MeasureKind
  readonly unit: Unit
  /** Nearer, to the left, lower, down, less. */
  readonly less: DriftEnd
  readonly more: DriftEnd
}

export interface ThingDrifts {
  readonly thing: ThingKind
  /** Id of the light or piece; null for camera and subject. */
  readonly id: string | null
  /** The light's letter, the piece's label, "camera", "subject". */
  readonly name: string
  /** The most delicate first within each unit's own scale. */
  readonly drifts: readonly Drift[]
}

/**
 * How far each measure of a set may drift before the picture shows it: before any area in frame that is not in deep
 * shadow moves by a third of a stop, or its colour by a visible step at the same lightness. By predictions of the set so
 * drifted. One thing after the other, so that a caller may stop in between.
 * @throws RangeError when the plan has no such look
 */
export function* whatMatters(plan: Plan, lookId: string, predictor: Predictor): Generator<ThingDrifts, void> {
  const before = predictor(plan, lookId)
  for (const { thing, id, name, measures } of driftsOfLook(plan, lookId)) {
    const drifts = measures.map((measure): Drift => {
      const less = endOf({ plan, lookId, predictor, before, measure }, -1, measure.limit * FIRST_TRY_SHARE)
      // The other way is most often about as delicate.
      return { measure: measure.measure, unit: measure.unit, less, more: endOf({ plan, lookId, predictor, before, measure }, 1, less.amount) }
    }).sort((a, b) => tightness(a) - tightness(b))
    yield { thing, id, name, drifts }
  }
}

interface Search {
  readonly plan: Plan
  readonly lookId: string
  readonly predictor: Predictor
  readonly before: Prediction
  readonly measure: MeasureOfThing
}

function endOf({ plan, lookId, predictor, before, measure: { edit, limit } }: Search, sign: 1 | -1, firstTry: number): DriftEnd {
  const at = (amount: number): FirstToGo => {
    const drifted: PlanEdit | null = edit(sign * amount)
    return driftScore(before, drifted ? predictor(applyEdit(plan, drifted), lookId) : before)
  }
  let under = 0
  let underScore = 0
  let over: { readonly amount: number; readonly found: FirstToGo } | null = null
  let amount = firstTry
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const found = at(amount)
    if (Math.abs(found.score - 1) <= GOOD_WITHIN) return endAt(amount / found.score, found)
    if (found.score >= 1) over = { amount, found }
    else [under, underScore] = [amount, found.score]
    if (over === null && amount >= limit) return { amount: limit, isMore: true, first: null }
    if (over !== null && under / over.amount > 1 - GOOD_WITHIN) break
    amount = next(under, underScore, over, limit)
  }
  if (over === null) return { amount: under, isMore: true, first: null }
  // On the straight line between the last that does not show and the first that does.
  return endAt(under + ((over.amount - under) * (1 - underScore)) / (over.found.score - underScore), over.found)
}

function endAt(amount: number, { areaId, label, by }: FirstToGo): DriftEnd {
  return { amount, isMore: false, first: areaId === null ? null : { areaId, label, by } }
}

/** Where the threshold lies if all goes in straight lines; a little past it while none was found that shows. */
function next(
  under: number, underScore: number, over: { readonly amount: number; readonly found: FirstToGo } | null, limit: number,
): number {
  if (over === null) return underScore > 0 ? Math.min(limit, Math.max(1.5 * under, (1.05 * under) / underScore)) : limit
  const straight = under + ((over.amount - under) * (1 - underScore)) / (over.found.score - underScore)
  // Never so close to an end that the other never moves.
  const margin = (over.amount - under) / 20
  return Math.min(Math.max(straight, under + margin), over.amount - margin)
}

const EASY: Readonly<Record<Unit, number>> = { metres: 0.1, degrees: 10, stops: 0.33 }

function tightness({ unit, less, more }: Drift): number {
  return Math.min(less.amount, more.amount) / EASY[unit]
}

/** "distance ±3 cm", `distance ±1"`, "tilt more than ±30°": the tighter way, rounded down, so that nobody is promised too much. */
export function driftWords({ measure, unit, less, more }: Drift, units: Units): string {
  const tighter = less.amount <= more.amount ? less : more
  const isMore = less.isMore && more.isMore
  return `${measure} ${isMore ? 'more than ' : ''}±${amountWords(tighter.amount, unit, units)}`
}

function amountWords(amount: number, unit: Unit, units: Units): string {
  // A hair's breadth under a whole number is that number.
  const down = (value: number): number => Math.floor(value + 1e-6)
  switch (unit) {
    case 'metres': {
      if (units === 'metric') return amount < 0.01 ? '1 cm' : `${down(amount * 100)} cm`
      // Tapes are read to the half inch; below it a quarter says "as exactly as you can".
      const halfInches = down((2 * amount) / METRES_PER_INCH)
      return halfInches === 0 ? '¼"' : formatLength((halfInches * METRES_PER_INCH) / 2, units)
    }
    case 'degrees': return amount < 1 ? '1°' : `${down(amount)}°`
    case 'stops': return `${(down(amount * 10) / 10).toFixed(1)} stop`
  }
}
