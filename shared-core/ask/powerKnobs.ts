import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'
import type { PlanChange } from '../plan/edit.ts'
import { fitToHead } from '../plan/fitToHead.ts'
import type { Head } from '../plan/schema/kit.ts'
import { lightOf, lookOf, type Draft } from './draft.ts'
import { energyChange } from './lightChanges.ts'
import type { LookModel } from './lookModel.ts'
import type { Task } from './task.ts'

/** Energies that a plan can say at all, whatever head there is. */
const LEAST_JOULES = 0.01
const MOST_JOULES = 20_000

/** Lights turned up and down together: one light, or all behind the subject when white is wanted there. */
export interface Knob {
  readonly lights: readonly { readonly id: string; readonly head: Head }[]
}

/** What a knob may reach: what its heads can give, or whatever a plan can say, to learn what is missing. */
export type Reach = 'heads' | 'anything'

/** One knob for each light that is on and free, with those behind in common when white is wanted there. */
export function knobsOf(task: Task, draft: Draft, freeIds: ReadonlySet<string>): readonly Knob[] {
  const isWhiteWanted = task.aims.some(({ want }) => want.kind === 'white-behind')
  const behind: { id: string; head: Head }[] = []
  const knobs: Knob[] = []
  for (const [id, light] of Object.entries(lookOf(draft).lights)) {
    const head = draft.plan.heads[light.headId]
    if (!light.on || !freeIds.has(id) || !head) continue
    if (isWhiteWanted && light.plane === 'background') behind.push({ id, head })
    else knobs.push({ lights: [{ id, head }] })
  }
  return behind.length > 0 ? [...knobs, { lights: behind }] : knobs
}

/** How far a knob may be turned from where it is, in stops. A light set past its range is first of all brought into it. */
export function rangeOf({ lights }: Knob, draft: Draft, reach: Reach): { readonly lower: number; readonly upper: number } {
  const to = (limit: (head: Head) => number) => lights.map(({ id, head }) => stopsFromTimes(limit(head) / lightOf(draft, id).energyJoules))
  const lower = Math.max(...to((head) => (reach === 'heads' ? head.lowestEnergyJoules : LEAST_JOULES)))
  const upper = Math.min(...to((head) => (reach === 'heads' ? head.fullEnergyJoules : MOST_JOULES)))
  return upper >= lower ? { lower, upper } : { lower: upper, upper }
}

/** Turns a knob by some stops, between the steps. */
export function turned({ lights }: Knob, draft: Draft, stops: number): PlanChange[] {
  return lights.map(({ id }) => energyChange(draft.lookId, id, lightOf(draft, id).energyJoules * timesFromStops(stops)))
}

/** The same on the heads' steps and within their ranges. */
export function turnedToStep({ lights }: Knob, draft: Draft, stops: number): PlanChange[] {
  return lights.map(({ id, head }) =>
    energyChange(draft.lookId, id, fitToHead(head, lightOf(draft, id).energyJoules * timesFromStops(stops))))
}

/** Settings of a knob on the heads' steps around some stops from where it is: those below and above, and one further. */
export function stepsNear(knob: Knob, draft: Draft, stops: number): readonly number[] {
  const first = knob.lights[0]!
  const energy = lightOf(draft, first.id).energyJoules
  const step = Math.max(...knob.lights.map(({ head }) => head.stepStops))
  const found = new Set([-1.5, -0.5, 0, 0.5, 1.5].map((steps) =>
    stopsFromTimes(fitToHead(first.head, energy * timesFromStops(stops + steps * step)) / energy)))
  return [...found].sort((a, b) => Math.abs(a - stops) - Math.abs(b - stops)).slice(0, 4)
}

/** The model's multipliers for knobs turned by some stops. */
export function timesOf(model: LookModel, knobs: readonly Knob[], stops: readonly number[]): number[] {
  const times = new Map(knobs.flatMap(({ lights }, i) => lights.map(({ id }): [string, number] => [id, timesFromStops(stops[i]!)])))
  return model.lightIds.map((id) => times.get(id) ?? 1)
}
