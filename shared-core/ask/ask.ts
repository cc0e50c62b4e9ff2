import type { PlanChange } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { createPredictor, type Predictor } from '../predict/predict.ts'
import type { AreaId, Prediction } from '../predict/prediction.ts'
import { stopsFromTimes } from '../arithmetic/portable.ts'
import { aimsOf, keptAims, type Aim } from './aim.ts'
import type { Answer, Limit, Way } from './answer.ts'
import { costsOf } from './costs.ts'
import { changed, draftOf, editOf, lookOf, type Draft } from './draft.ts'
import { byColour } from './ways/byColour.ts'
import { gelChange } from './lightChanges.ts'
import { powerLimit, type Excess } from './limits.ts'
import { modelOf } from './modelOf.ts'
import { movesOf } from './moves.ts'
import { solvePowers, type PowerSolution } from './powers.ts'
import { Task } from './task.ts'
import type { Want } from './want.ts'
import { byDistance } from './ways/byDistance.ts'
import { byGel } from './ways/byGel.ts'
import { byHead } from './ways/byHead.ts'
import { byIso } from './ways/byIso.ts'
import { byModifier } from './ways/byModifier.ts'
import { hasMargin, type Trial, type Tried, type TriedWays } from './ways/trial.ts'

const MOST_WAYS = 3
/** A way that does not meet everything must at least come so much nearer than powers alone, in stops. */
const WORTH_TELLING_STOPS = 0.05

export interface AskOptions {
  readonly predictor?: Predictor
  /** Powers alone: fast enough for a hand that drags. */
  readonly isPowersOnly?: boolean
  /** Whether two sheets may be laid together where a colour is wanted. */
  readonly allowsStacks?: boolean
  /** Called between steps with the share done, 0-1. */
  readonly onProgress?: (share: number) => void
  /** Asked between steps; true gives the answer as far as it has come. */
  readonly isCancelled?: () => boolean
}

/**
 * What gives a look that has what is wanted: up to three ways of different kinds, from the kit that there is, each one
 * edit and each judged by the real prediction.
 * @throws RangeError when the plan has no such look.
 */
export function ask(plan: Plan, lookId: string, wants: readonly Want[], options: AskOptions = {}): Answer {
  const steps = askInSteps(plan, lookId, wants, options)
  for (;;) {
    const step = steps.next(options.isCancelled?.() ?? false)
    if (step.done) return step.value
    options.onProgress?.(step.value)
  }
}

/**
 * The same in steps, for a worker that must hear between them whether it is still wanted: each step gives the share
 * done, and takes whether to stop there.
 */
export function* askInSteps(
  plan: Plan, lookId: string, wants: readonly Want[], options: AskOptions = {},
): Generator<number, Answer, boolean> {
  const predictor = options.predictor ?? createPredictor()
  const original = draftOf(plan, lookId)
  const from = predictor(plan, lookId)
  const aims = aimsOf(wants, lookOf(original), modelOf(from, lookOf(original).meter))
  const base = withWhatIsSaid(original, aims)
  const task = new Task([...aims, ...levelsToKeep(from, aims)], predictor)
  const powers = solvePowers(task, base)
  const found: Tried[] = [{ by: 'powers', title: powersTitle(original, powers), solution: powers }]
  const limit = powers.shortfall > 0 ? powerLimit(task, base) : null
  const trial: Trial = { task, original, from, base, powers, excesses: limit ? limit.excesses : tightLights(original, powers) }
  const limits: Limit[] = []
  const kinds = options.isPowersOnly ? [] : kindsToTry(trial, limit !== null, options.allowsStacks ?? false)
  let isComplete = true
  for (const [at, kind] of kinds.entries()) {
    const isCalledOff: boolean = yield at / kinds.length
    if (isCalledOff) {
      isComplete = false
      break
    }
    const tried = kind(trial)
    limits.push(...tried.limits)
    if (tried.best) found.push(tried.best)
  }
  const ways = ranked(trial, found).map((each) => wayOf(trial, each))
  return { ways, limit: limit?.limit ?? null, furtherLimits: limits, isComplete }
}

/** Where a colour is wanted that powers do not give, sheets and places are searched together; else one kind at a time. */
function kindsToTry({ task, excesses }: Trial, isShort: boolean, allowsStacks: boolean): ((trial: Trial) => TriedWays)[] {
  if (isShort && task.aims.some(({ want }) => want.kind === 'area-colour')) return [(trial) => byColour(trial, allowsStacks)]
  return excesses.length === 0 ? [] : [byIso, byDistance, byModifier, byGel, byHead]
}

/** Sheets, aperture and film speed are done as said. */
function withWhatIsSaid(draft: Draft, aims: readonly Aim[]): Draft {
  const camera = (key: string, set: number): PlanChange => ({ path: ['looks', draft.lookId, 'camera', key], set })
  return changed(draft, aims.flatMap(({ want, lightId }): PlanChange[] => {
    switch (want.kind) {
      case 'aperture': return [camera('fNumber', want.fNumber)]
      case 'iso': return [camera('isoSpeed', want.isoSpeed)]
      case 'area-gel': return lightId === null ? [] : [gelChange(draft.lookId, lightId, want.gelIds)]
      default: return []
    }
  }))
}

/** All levels when the camera is changed; of a light with new sheets its own, unless that is said. */
function levelsToKeep({ lights }: Prediction, aims: readonly Aim[]): readonly Aim[] {
  const isCamera = aims.some(({ want }) => want.kind === 'aperture' || want.kind === 'iso')
  const newSheets = new Set(aims.flatMap(({ want, lightId }) => (want.kind === 'area-gel' && want.stops === null && lightId !== null ? [lightId] : [])))
  const spoken = aims.filter(({ want }) => want.kind !== 'area-gel' || want.stops !== null)
  return keptAims(lights, spoken, (id) => isCamera || newSheets.has(id))
}

/** Lights that powers alone leave with too little in hand: the other ways are for them. */
function tightLights(original: Draft, { draft, prediction }: PowerSolution): Excess[] {
  return prediction.lights.flatMap((light): Excess[] => {
    if (!light.on || lookOf(original).lights[light.id] === lookOf(draft).lights[light.id]) return []
    if (light.stopsInHand < 0.29) return [{ lightId: light.id, stops: 1e-3 }]
    return light.stopsAboveLowest < 0.29 ? [{ lightId: light.id, stops: -1e-3 }] : []
  })
}

function powersTitle(original: Draft, { draft, prediction }: PowerSolution): string {
  const changes = prediction.lights.flatMap((light) => {
    const old = lookOf(original).lights[light.id]
    const now = lookOf(draft).lights[light.id]!
    const stops = old ? stopsFromTimes(now.energyJoules / old.energyJoules) : 0
    return Math.abs(stops) > 0.01 ? [`${light.letter} to ${light.powerText}`] : []
  })
  return changes.length === 0 ? 'Powers as they are' : `Powers: ${changes.sort().join(', ')}`
}

function ranked(trial: Trial, found: readonly Tried[]): Tried[] {
  const meeting = found.filter(({ solution }) => solution.shortfall === 0)
  if (meeting.length > 0) {
    const weight = ({ solution, by }: Tried): number =>
      (hasMargin(trial, solution) ? 0 : 100) + movesCount(trial, solution) + (by === 'powers' ? 0 : 1)
    const best = [...meeting].sort((a, b) => weight(a) - weight(b))
    // Powers alone need nobody to move anything: they stay among the ways, whatever else there is.
    const powers = best.findIndex(({ by }) => by === 'powers')
    return powers < MOST_WAYS ? best.slice(0, MOST_WAYS) : [...best.slice(0, MOST_WAYS - 1), best[powers]!]
  }
  const isNearer = ({ solution, by }: Tried): boolean =>
    by === 'powers' || solution.shortfall < trial.powers.shortfall - WORTH_TELLING_STOPS
  return found.filter(isNearer).sort((a, b) => a.solution.shortfall - b.solution.shortfall).slice(0, MOST_WAYS)
}

function movesCount(trial: Trial, { draft, prediction }: PowerSolution): number {
  return movesOf({ before: trial.original, after: draft, from: trial.from, to: prediction }).length
}

function wayOf({ original, from, task }: Trial, { by, title, solution }: Tried): Way {
  const { draft, prediction, outcomes, shortfall } = solution
  const step = { before: original, after: draft, from, to: prediction }
  const wanted = new Set(task.aims.flatMap(({ want }): AreaId[] => ('areaId' in want ? [want.areaId] : [])))
  return {
    by, title, moves: movesOf(step), costs: costsOf(step, wanted), edit: editOf(draft), outcomes, meetsAll: shortfall === 0, prediction,
  }
}
