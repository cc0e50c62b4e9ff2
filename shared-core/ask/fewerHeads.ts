import { applyEdit, type PlanEdit } from '../plan/edit.ts'
import { together } from '../plan/edits/adding.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import type { Prediction } from '../predict/prediction.ts'
import { ask } from './ask.ts'
import { lostWords } from './lostWords.ts'
import { remediesFor, type Lack, type Remedy } from './remedies.ts'
import { areaChanges, type AreaChange } from './visibleChange.ts'
import type { Want } from './want.ts'

/** What cannot be rigged weighs as much as a picture nobody would know again. */
const IMPOSSIBLE_CHANGE = 1_000

/** A look that is left when something is missing. */
export interface LookLeft {
  /** "Without C, a white board in its place" */
  readonly title: string
  /** What is gone or otherwise, in words, the worst first; empty when nobody would see it. */
  readonly lost: readonly string[]
  /** Summed CIEDE2000 of all areas in frame against the look as it was. */
  readonly change: number
  /** The areas that change most, the most first. */
  readonly areas: readonly AreaChange[]
  /** Snags that stop the work and were not there before, in their own words. */
  readonly stops: readonly string[]
  readonly edit: PlanEdit
  /** With the edit applied. */
  readonly prediction: Prediction
}

export interface LooksLeft {
  /** Nearest to the look as it was; null when there is nothing to try. */
  readonly best: LookLeft | null
  /** All others that were tried, nearest first. */
  readonly others: readonly LookLeft[]
}

/**
 * The best look that is left with fewer heads, another head, other modifiers or a lower room. Every remedy is solved anew
 * for the levels that the lights had, and judged by how much of the picture a person would see changed.
 * @throws RangeError when the plan has no such look
 */
export function fewerHeads(plan: Plan, lookId: string, lack: Lack, predictor: Predictor): LooksLeft {
  const steps = fewerHeadsInSteps(plan, lookId, lack, predictor)
  for (;;) {
    const step = steps.next(false)
    if (step.done) return step.value
  }
}

/** The same in steps, one a remedy: each gives the share done, and takes whether to stop at the looks found by then. */
export function* fewerHeadsInSteps(
  plan: Plan, lookId: string, lack: Lack, predictor: Predictor,
): Generator<number, LooksLeft, boolean> {
  const before = predictor(plan, lookId)
  const remedies = remediesFor(plan, lookId, lack, predictor)
  const looks: LookLeft[] = []
  for (const remedy of remedies) {
    const isCalledOff: boolean = yield looks.length / remedies.length
    if (isCalledOff) break
    looks.push(lookLeft(plan, lookId, remedy, before, predictor))
  }
  const weight = ({ change, stops }: LookLeft): number => change + IMPOSSIBLE_CHANGE * stops.length
  const [best, ...others] = looks.sort((a, b) => weight(a) - weight(b))
  return { best: best ?? null, others }
}

function lookLeft(plan: Plan, lookId: string, remedy: Remedy, before: Prediction, predictor: Predictor): LookLeft {
  const changed = applyEdit(plan, remedy.edit)
  const [way] = ask(changed, lookId, levelsOf(changed, lookId, before), { predictor, isPowersOnly: true }).ways
  const edit = way ? together('fewerHeads', remedy.edit, way.edit) : { ...remedy.edit, name: 'fewerHeads' }
  const after = applyEdit(plan, edit)
  const prediction = predictor(after, lookId)
  const areas = [...areaChanges(before, prediction)].sort((a, b) => b.difference - a.difference)
  const known = new Set(before.snags.map(({ key }) => key))
  return {
    title: remedy.title,
    lost: lostWords({ plan, after, lookId, before, prediction, areas }),
    change: areas.reduce((sum, { difference }) => sum + difference, 0),
    areas,
    stops: prediction.snags.filter(({ key, severity }) => severity === 'stop' && !known.has(key)).map(({ message }) => message),
    edit,
    prediction,
  }
}

/** Each light that still burns reads what it read, where it is metered. */
function levelsOf(plan: Plan, lookId: string, before: Prediction): readonly Want[] {
  return before.lights.flatMap((light): Want[] =>
    light.level.stops !== null && plan.looks[lookId]!.lights[light.id]?.on === true
      ? [{ kind: 'light-level', lightId: light.id, stops: light.level.stops }] : [])
}
