import { changed, lookOf, type Draft } from './draft.ts'
import { residuals, type ClearChannels, toleranceOf } from './judge.ts'
import { modelOf } from './modelOf.ts'
import { stepsNear, timesOf, turnedToStep, type Knob } from './powerKnobs.ts'
import type { PowerSolution } from './powers.ts'
import type { Task } from './task.ts'

/** All neighbours of so many knobs are tried together; of more, one after the other. */
const MOST_TOGETHER = 4
/** Settings that the model thinks best, tried by the real prediction. */
const TRIED_FOR_REAL = 4
/** Past its tolerance a miss weighs so much more. */
const PAST_TOLERANCE_WEIGHT = 30

/**
 * Brings solved powers onto the heads' steps: the neighbouring settings are weighed by the model, the best of them judged
 * by the real prediction. Rounding each light by itself could miss an area that several lights share.
 */
export function onTheSteps(
  task: Task, draft: Draft, knobs: readonly Knob[], clear: ClearChannels, judge: (draft: Draft) => PowerSolution,
): PowerSolution {
  const model = modelOf(task.predict(draft), lookOf(draft).meter)
  const settings = knobs.map((knob) => stepsNear(knob, draft, 0))
  const costOf = (stops: readonly number[]): number => {
    const readings = model.at(timesOf(model, knobs, stops))
    return task.aims.reduce((sum, aim) => {
      const allowed = aim.want.kind === 'area-level' || aim.want.kind === 'light-level' || aim.want.kind === 'area-gel'
        ? toleranceOf(aim, draft) * 0.9 : 0.1
      return sum + residuals(aim, readings, draft, clear).reduce((total, miss) => {
        const past = Math.max(0, Math.abs(miss) - allowed) * PAST_TOLERANCE_WEIGHT
        return total + miss * miss + past * past
      }, 0)
    }, stops.reduce((sum, each) => sum + 1e-4 * each * each, 0))
  }
  const tried = knobs.length <= MOST_TOGETHER ? allOf(settings) : oneAfterAnother(settings, costOf)
  const best = tried.map((stops) => ({ stops, cost: costOf(stops) })).sort((a, b) => a.cost - b.cost).slice(0, TRIED_FOR_REAL)
  const solutions = best.map(({ stops }) =>
    judge(changed(draft, knobs.flatMap((knob, i) => turnedToStep(knob, draft, stops[i]!)))))
  return solutions.reduce((least, each) => (each.shortfall < least.shortfall - 1e-9 ? each : least))
}

/** Every combination. */
function allOf(settings: readonly (readonly number[])[]): number[][] {
  return settings.reduce<number[][]>((sets, choices) => sets.flatMap((set) => choices.map((choice) => [...set, choice])), [[]])
}

/** The best found by turning one knob at a time, and all that lie one step from it. */
function oneAfterAnother(settings: readonly (readonly number[])[], costOf: (stops: readonly number[]) => number): number[][] {
  let best = settings.map((choices) => choices[0]!)
  for (let turn = 0; turn < 3; turn++) {
    settings.forEach((choices, i) => {
      for (const choice of choices) {
        const next = best.map((stops, k) => (k === i ? choice : stops))
        if (costOf(next) < costOf(best)) best = next
      }
    })
  }
  return [best, ...settings.flatMap((choices, i) => choices.map((choice) => best.map((stops, k) => (k === i ? choice : stops))))]
}
