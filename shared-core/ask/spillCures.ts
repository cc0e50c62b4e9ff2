import type { PlanEdit } from '../plan/edit.ts'
import { applyEdit } from '../plan/edit.ts'
import { together } from '../plan/edits/adding.ts'
import { formatStops } from '../plan/entry/stops.ts'
import { fitToHead } from '../plan/fitToHead.ts'
import { timesFromStops } from '../arithmetic/portable.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import type { AreaId, Prediction } from '../predict/prediction.ts'
import type { Snag } from '../predict/snag.ts'
import { candidatesFor, type Candidate, type CureKind } from './cureCandidates.ts'
import { energyChange } from './lightChanges.ts'
import { areaChanges } from './visibleChange.ts'

/** A level at the place a light serves may move by less than this (common practice, no source: a meter's last digit). */
const KEPT_LEVEL_STOPS = 0.1

/** One thing that was tried against a spill. */
export interface Cure {
  readonly kind: CureKind
  /** "Put a fabric grid on A" */
  readonly title: string
  /** What it takes and what it does to the rest of the picture, in words. */
  readonly cost: string
  /** How far the diluter lies under the area's own light before and after; null when it is over five under. */
  readonly stopsUnderBefore: number
  readonly stopsUnderAfter: number | null
  /** Whether the line falls silent. */
  readonly isQuiet: boolean
  /** What other snags it brings, in their own words. */
  readonly newSnags: readonly string[]
  /** By how much it takes a light off the level it was set to: only power does. */
  readonly levelShiftStops: number
  /** Mean CIEDE2000 of all other areas in frame. */
  readonly changeElsewhere: number
  readonly edit: PlanEdit
}

export interface SpillCures {
  /** The snag's key, such as `spill:a:background`. */
  readonly key: string
  readonly areaId: AreaId
  readonly diluterLightId: string
  readonly stopsUnder: number
  readonly thresholdStops: number
  /** The one to do; null when nothing that was tried silences the line. */
  readonly best: Cure | null
  /** All others, best first, the nearest misses too. */
  readonly others: readonly Cure[]
}

/** Snags of the spills that are not quiet, in the prediction's order. */
export function loudSpills(prediction: Prediction): readonly Snag[] {
  return prediction.snags.filter(({ rule }) => rule === 'spill' || rule === 'second-colour')
}

/** Cures of every spill that is not quiet, one spill after the other, so that a caller may stop in between. */
export function* spillCures(plan: Plan, lookId: string, predictor: Predictor): Generator<SpillCures, void> {
  for (const snag of loudSpills(predictor(plan, lookId))) yield curesOf(plan, lookId, snag, predictor)
}

/**
 * Tries every cure of one spill by the real prediction: a grid, a black flag where it works, the light turned or moved
 * with its level kept, power. A cure that shifts a light by a tenth of a stop where it is metered does not count.
 * @param snag of the rules 'spill' or 'second-colour', from this plan's prediction
 */
export function curesOf(plan: Plan, lookId: string, snag: Snag, predictor: Predictor): SpillCures {
  const [diluterLightId, areaId] = snag.about as [string, AreaId]
  const before = predictor(plan, lookId)
  const view: Trial = { plan, lookId, predictor, snag, before, diluterLightId, areaId }
  const tried = candidatesFor(plan, lookId, before, snag).flatMap((candidate) => tryCure(view, candidate) ?? [])
    .filter(({ stopsUnderAfter }) => stopsUnderAfter === null || stopsUnderAfter > snag.value)
  const bestOfKind = bestOfEachKind(tried.sort((a, b) => weight(a, snag) - weight(b, snag)))
  const best = bestOfKind.find(({ isQuiet }) => isQuiet) ?? null
  return {
    key: snag.key, areaId, diluterLightId, stopsUnder: snag.value, thresholdStops: snag.threshold,
    best,
    others: bestOfKind.filter((cure) => cure !== best),
  }
}

interface Trial {
  readonly plan: Plan
  readonly lookId: string
  readonly predictor: Predictor
  readonly snag: Snag
  readonly before: Prediction
  readonly diluterLightId: string
  readonly areaId: AreaId
}

function tryCure(trial: Trial, candidate: Candidate): Cure | null {
  const { plan, lookId, predictor, snag, before, areaId } = trial
  const kept = candidate.keepsLevel ? withLevelKept(trial, candidate.edit) : { edit: candidate.edit, powerStops: 0 }
  const after = predictor(applyEdit(plan, kept.edit), lookId)
  if (!levelsKept(before, after, candidate.mayShift)) return null
  const keysBefore = new Set(before.snags.map(({ key }) => key))
  const still = after.snags.find(({ key }) => key === snag.key)
  const spill = after.spills.find((each) => each.areaId === areaId && each.diluterLightId === trial.diluterLightId)
  const place = areaId.startsWith('background-') ? 'background-' : areaId
  const elsewhere = areaChanges(before, after).filter((change) => !change.areaId.startsWith(place))
  const changeElsewhere = elsewhere.reduce((sum, { difference }) => sum + difference, 0) / Math.max(1, elsewhere.length)
  const most = elsewhere.reduce((a, b) => (a.difference >= b.difference ? a : b), elsewhere[0]!)
  const rest = most && most.difference >= 1 ? `; ${most.label} changes most${most.stops === null ? '' : ` (${formatStops(most.stops)})`}` : ''
  const power = Math.abs(kept.powerStops) < 0.05 ? '' : `; power ${formatStops(kept.powerStops)} to keep its level`
  return {
    kind: candidate.kind,
    title: candidate.title,
    cost: `${candidate.cost}${power}${rest}`,
    stopsUnderBefore: snag.value,
    stopsUnderAfter: still?.value ?? spill?.stopsUnder ?? null,
    isQuiet: still === undefined,
    newSnags: after.snags.filter(({ key, severity }) => severity !== 'note' && !keysBefore.has(key)).map(({ message }) => message),
    levelShiftStops: candidate.mayShift === null ? 0 : Math.abs((levelOf(after, candidate.mayShift) ?? 0) - (levelOf(before, candidate.mayShift) ?? 0)),
    changeElsewhere,
    edit: kept.edit,
  }
}

/** The diluter's power set so that it reads as before at the place it serves. */
function withLevelKept({ plan, lookId, predictor, before, diluterLightId }: Trial, edit: PlanEdit): { edit: PlanEdit; powerStops: number } {
  const moved = predictor(applyEdit(plan, edit), lookId)
  const was = levelOf(before, diluterLightId)
  const is = levelOf(moved, diluterLightId)
  const light = plan.looks[lookId]!.lights[diluterLightId]!
  const head = plan.heads[light.headId]
  if (was === null || is === null || !head) return { edit, powerStops: 0 }
  const energyJoules = fitToHead(head, light.energyJoules * timesFromStops(was - is))
  const power: PlanEdit = { name: edit.name, changes: [energyChange(lookId, diluterLightId, energyJoules)] }
  return { edit: together(edit.name, edit, power), powerStops: Math.log2(energyJoules / light.energyJoules) }
}

function levelsKept(before: Prediction, after: Prediction, mayShift: string | null): boolean {
  return before.lights.every(({ id, on }) => {
    if (!on || id === mayShift) return true
    const was = levelOf(before, id)
    const is = levelOf(after, id)
    return was === null || (is !== null && Math.abs(is - was) < KEPT_LEVEL_STOPS)
  })
}

function levelOf({ lights }: Prediction, lightId: string): number | null {
  return lights.find(({ id }) => id === lightId)?.level.stops ?? null
}

/** Less is better: quiet before loud, no new trouble, the picture left alone, and little work (weights: common practice, no source). */
function weight(cure: Cure, snag: Snag): number {
  const short = cure.isQuiet ? 0 : 100 + 10 * (snag.threshold - (cure.stopsUnderAfter ?? snag.threshold))
  return short + 10 * cure.newSnags.length + cure.changeElsewhere + 4 * cure.levelShiftStops + WORK[cure.kind]
}

const WORK: Readonly<Record<CureKind, number>> = { power: 0, grid: 0.3, turn: 0.5, move: 0.8, flag: 0.8 }

function bestOfEachKind(sorted: readonly Cure[]): readonly Cure[] {
  return sorted.filter((cure, i) => sorted.findIndex(({ kind }) => kind === cure.kind) === i)
}
