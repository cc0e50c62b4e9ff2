import { add, direction, distance, scale, subtract } from '../../arithmetic/vector.ts'
import { vectorOf } from '../../set/emitter.ts'
import type { AreaId } from '../../predict/prediction.ts'
import { changed, lightOf, lookOf, type Draft } from '../draft.ts'
import { gelChange, placeChange } from '../lightChanges.ts'
import type { LookModel } from '../lookModel.ts'
import { modelOf } from '../modelOf.ts'
import { sheetsLeft } from './byGel.ts'
import { inTheWayOf, type Trial } from './trial.ts'

/** Distances tried first, as shares of a light's distance from its aim; finer steps follow by the real prediction. */
const DISTANCE_TIMES = [1, 0.9, 1.1, 0.8, 1.25, 0.7, 1.45] as const
const NEAREST_METRES = 0.3
const STEP_METRES = 0.05

/** What one light may become: its sheets and its place on its axis. */
export interface Choice {
  readonly gelIds: readonly string[]
  /** Steps of 5 cm in towards its aim; negative is back. */
  readonly stepsIn: number
}

/** A choice with the model it is weighed by. */
export interface WeighedChoice extends Choice {
  readonly sheets: LookModel
  /** Light at an area from this distance over that from where the light stands. */
  readonly timesAt: (areaId: AreaId) => number
  readonly timesLevel: number
  /** Whether the light is left as it is. */
  readonly isPresent: boolean
}

/** Applies a choice to a light of the base. */
export function chosen(draft: Draft, lightId: string, { gelIds, stepsIn }: Choice): Draft {
  const light = lightOf(draft, lightId)
  const sheets = light.gelIds.join() === gelIds.join() ? [] : [gelChange(draft.lookId, lightId, gelIds)]
  if (stepsIn === 0) return changed(draft, sheets)
  const place = vectorOf(light.place)
  const axis = direction(subtract(vectorOf(light.aim), place))
  return changed(draft, [...sheets, placeChange(draft.lookId, lightId, 'place', add(place, scale(axis, stepsIn * STEP_METRES)))])
}

/**
 * What every light may become, weighed by few predictions: light adds, so one prediction with the same sheets on all
 * lights tells what those sheets do on each, and one with all lights moved what moving does.
 */
export function choicesOf(trial: Trial, lightIds: readonly string[], sheetSets: readonly (readonly string[])[]): WeighedChoice[][] {
  const { task, base } = trial
  const present = modelOf(task.predict(base), lookOf(base).meter)
  const bySheets = sheetSets.map((gelIds) => {
    const draft = changed(base, lightIds.map((id) => gelChange(base.lookId, id, gelIds)))
    return { gelIds, model: modelOf(task.predict(draft), lookOf(base).meter) }
  })
  const byTimes = DISTANCE_TIMES.map((times) => {
    const steps = new Map(lightIds.map((id) => [id, stepsFor(base, id, times)]))
    const draft = lightIds.reduce((moved, id) => chosen(moved, id, { gelIds: lightOf(base, id).gelIds, stepsIn: steps.get(id)! }), base)
    const prediction = task.predict(draft)
    return { steps, model: modelOf(prediction, lookOf(base).meter), isFree: (id: string) => inTheWayOf(id, trial, prediction).length === 0 }
  })
  return lightIds.map((id) => {
    const at = present.lightIds.indexOf(id)
    const own = lightOf(base, id).gelIds
    const isSaid = task.aims.some(({ want, lightId }) => want.kind === 'area-gel' && lightId === id)
    const sheets = [
      { gelIds: own, model: present },
      ...bySheets.filter(({ gelIds }) => !isSaid && gelIds.join() !== own.join() && gelIds.every((gel) => sheetsLeft(gel, base) > 0 || own.includes(gel))),
    ]
    const places = byTimes.filter(({ steps, isFree }, i) => i === 0 || (steps.get(id) !== 0 && isFree(id)))
    return sheets.flatMap(({ gelIds, model }, s) => places.map(({ steps, model: moved }, p): WeighedChoice => ({
      gelIds, stepsIn: steps.get(id)!, sheets: model, isPresent: s === 0 && p === 0,
      timesAt: (areaId) => timesAt(moved, present, areaId, at),
      timesLevel: present.levelOf(at) > 0 ? moved.levelOf(at) / present.levelOf(at) : 1,
    })))
  })
}

function timesAt(moved: LookModel, present: LookModel, areaId: AreaId, lightIndex: number): number {
  const before = present.partsAt(areaId)?.lights[lightIndex]?.luxSeconds ?? 0
  const after = moved.partsAt(areaId)?.lights[lightIndex]?.luxSeconds ?? 0
  return before > 0 ? after / before : 1
}

function stepsFor(draft: Draft, lightId: string, times: number): number {
  const light = lightOf(draft, lightId)
  const reach = distance(vectorOf(light.place), vectorOf(light.aim))
  return Math.round((reach - Math.max(NEAREST_METRES, reach * times)) / STEP_METRES) || 0
}

/** Every single sheet of the drawer and clear; with stacks, every two sheets as well. */
export function sheetSetsOf({ plan }: Draft, allowsStacks: boolean): (readonly string[])[] {
  const owned = Object.entries(plan.gels).filter(([, { sheets }]) => sheets > 0).map(([id]) => id)
  const pairs = owned.flatMap((a, i) => owned.slice(i + 1).map((b) => [a, b]))
  return [[], ...owned.map((id) => [id]), ...(allowsStacks ? pairs : [])]
}
