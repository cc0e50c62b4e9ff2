import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'
import type { Head } from './schema/kit.ts'

type PowerRange = Pick<Head, 'fullEnergyJoules' | 'lowestEnergyJoules' | 'stepStops'>

/**
 * The nearest energy the head's own steps can give, counted down from full power; not bounded by its range, so that a
 * plan may ask for more than there is and be told so.
 */
export function onHeadStep(head: PowerRange, energyJoules: number): number {
  const steps = Math.round(stopsFromTimes(energyJoules / head.fullEnergyJoules) / head.stepStops)
  return head.fullEnergyJoules * timesFromStops(steps * head.stepStops)
}

/**
 * The nearest energy this head can really be set to: on a step, and within its range. `energyJoules` must be above 0;
 * the lowest energy is always allowed, even where it does not fall on a step.
 */
export function fitToHead(head: PowerRange, energyJoules: number): number {
  if (!(energyJoules > head.lowestEnergyJoules)) return head.lowestEnergyJoules
  if (energyJoules >= head.fullEnergyJoules) return head.fullEnergyJoules
  return Math.min(Math.max(onHeadStep(head, energyJoules), head.lowestEnergyJoules), head.fullEnergyJoules)
}
