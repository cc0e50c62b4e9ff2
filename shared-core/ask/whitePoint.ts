import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'
import type { PlanEdit } from '../plan/edit.ts'
import { fitToHead } from '../plan/fitToHead.ts'
import type { Head } from '../plan/schema/kit.ts'
import type { Light } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { lightsInSetUpOrder } from '../predict/sceneOfLook.ts'
import type { Prediction, WhiteVerdict } from '../predict/prediction.ts'
import { energyChange, gelChange } from './lightChanges.ts'

/** One setting of the lights behind, and what it does to white, rim and black. */
export interface WhitePoint {
  /** Change of the lights behind against the plan as it stands, common to all, in stops. */
  readonly stops: number
  /** Against the lowest setting that reads white, in stops; null where no power does. */
  readonly stopsFromWhite: number | null
  /** Whether every head concerned can be set so. */
  readonly canBeSet: boolean
  /** Of the worst place of the background. */
  readonly verdict: WhiteVerdict
  /** At the worst place; negative is in hand; null when it is dark. */
  readonly stopsMissing: number | null
  /** What wraps from behind where it is hottest, in stops from the aperture. */
  readonly wrapStops: number | null
  /** That wrap's hottest channel, in stops over clip: positive burns. */
  readonly hottestChannelStops: number | null
  /** Black as the lens's stray light lifts it, in stops from mid-grey. */
  readonly blackStopsUnderGrey: number | null
}

/** A light behind the subject with its head. */
export interface LightBehind {
  readonly id: string
  readonly light: Light
  readonly head: Head
}

/** Lights of the plane 'background' that are on, in set-up order. */
export function lightsBehind(plan: Plan, lookId: string): readonly LightBehind[] {
  const look = plan.looks[lookId]
  if (!look) throw new RangeError(`The plan has no look called ${lookId}`)
  return lightsInSetUpOrder(look).flatMap(([id, light]) => {
    const head = plan.heads[light.headId]
    return head && plan.modifiers[light.modifierId] && light.on && light.plane === 'background' ? [{ id, light, head }] : []
  })
}

/** By how much all lights behind may be raised or lowered together before the first head comes to an end of its range. */
export function roomTogether(behind: readonly LightBehind[]): { readonly lowest: number; readonly highest: number } {
  const toEnd = (end: 'lowestEnergyJoules' | 'fullEnergyJoules') =>
    behind.map(({ light, head }) => stopsFromTimes(head[end] / light.energyJoules))
  return { lowest: Math.max(...toEnd('lowestEnergyJoules')), highest: Math.min(...toEnd('fullEnergyJoules')) }
}

/**
 * Every light behind at its power changed by `stops`; with `gelIds` all of them carry these sheets.
 * @param asAsked not brought onto the head's steps and into its range
 */
export function whiteEdit(
  lookId: string, behind: readonly LightBehind[], stops: number, gelIds: readonly string[] | null, asAsked = false,
): PlanEdit {
  return {
    name: 'whiteBehind',
    changes: behind.flatMap(({ id, light, head }) => {
      const wanted = light.energyJoules * timesFromStops(stops)
      const energy = energyChange(lookId, id, asAsked ? wanted : fitToHead(head, wanted))
      return gelIds ? [gelChange(lookId, id, gelIds), energy] : [energy]
    }),
  }
}

/** What a prediction says of white, rim and black. */
export function whitePoint({ background }: Prediction, setting: Pick<WhitePoint, 'stops' | 'stopsFromWhite' | 'canBeSet'>): WhitePoint {
  const { wrap, stopsMissing } = background
  const whenWhite = wrap?.hottestChannelStopsWhenWhite ?? null
  return {
    ...setting,
    verdict: background.verdict,
    stopsMissing,
    wrapStops: wrap?.stopsNow ?? null,
    hottestChannelStops: whenWhite === null || stopsMissing === null ? null : whenWhite - stopsMissing,
    blackStopsUnderGrey: background.haze.blackStopsUnderGrey,
  }
}
