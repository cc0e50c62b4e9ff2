import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'
import { boundedLeastSquares } from './boundedLeastSquares.ts'
import type { Draft } from './draft.ts'
import { withHelpers } from './judge.ts'
import type { LookModel } from './lookModel.ts'
import type { Knob } from './powerKnobs.ts'
import type { Task } from './task.ts'

const STAY_WEIGHT = 1e-4

/**
 * Levels are sums of what each light gives, so energies for wanted levels are a linear problem with one best answer:
 * where the finer search in stops begins. Each row is an exposure over the one wanted.
 * @returns stops to turn each knob
 */
export function linearStart(
  task: Task, draft: Draft, knobs: readonly Knob[], model: LookModel, ranges: readonly { readonly lower: number; readonly upper: number }[],
): number[] {
  const off = model.lightIds.map(() => 0)
  // Each knob alone at the bright end of its range, so that every unknown lies between 0 and 1.
  const ends = knobs.map(({ lights }, i) => model.lightIds.map((id) =>
    (lights.some((light) => light.id === id) ? timesFromStops(ranges[i]!.upper) : 0)))
  const others = model.lightIds.map((id) => (knobs.some(({ lights }) => lights.some((light) => light.id === id)) ? 0 : 1))
  const matrix: number[][] = []
  const wanted: number[] = []
  const addRow = (exposureOf: (times: readonly number[]) => number, target: number): void => {
    matrix.push(ends.map((times) => (exposureOf(times) - exposureOf(off)) / target))
    wanted.push(1 - exposureOf(others) / target)
  }
  for (const { want, lightId } of task.aims) {
    if (want.kind === 'area-level') {
      addRow((times) => model.areaLuxSeconds(want.areaId, times), model.areaUnitAt(want.stops))
    } else if (want.kind === 'light-level') {
      addRow((times) => model.levelLuxSeconds(withHelpers(want.lightId, draft), times), model.levelUnitAt(want.stops))
    } else if (want.kind === 'area-gel' && want.stops !== null && lightId !== null) {
      addRow((times) => model.lightLuxSecondsAt(want.areaId, withHelpers(lightId, draft), times), model.areaUnitAt(want.stops))
    }
  }
  if (matrix.length === 0) return knobs.map((_, i) => Math.min(Math.max(0, ranges[i]!.lower), ranges[i]!.upper))
  knobs.forEach((_, i) => {
    matrix.push(knobs.map((__, k) => (k === i ? STAY_WEIGHT : 0)))
    wanted.push(STAY_WEIGHT * timesFromStops(Math.min(0, -ranges[i]!.upper)))
  })
  const lower = ranges.map((range) => timesFromStops(range.lower - range.upper))
  const shares = boundedLeastSquares(matrix, wanted, lower, knobs.map(() => 1))
  return shares.map((share, i) => ranges[i]!.upper + stopsFromTimes(share))
}
