import { stopsFromTimes } from '../arithmetic/portable.ts'

/** Power of a head: stored energy in joules (watt-seconds), in steps of a part of a stop below full. */
export interface PowerRange {
  readonly fullEnergyJoules: number
  readonly lowestEnergyJoules: number
  /** 0.1 for tenths, 1/3 for thirds. */
  readonly stepStops: number
}

/** Stops from full power, 0 or negative within the range. */
export function stopsFromFull(range: PowerRange, energyJoules: number): number {
  return stopsFromTimes(energyJoules / range.fullEnergyJoules)
}

/** Stops from lowest to full power. */
export function rangeStops(range: PowerRange): number {
  return stopsFromTimes(range.fullEnergyJoules / range.lowestEnergyJoules)
}

export interface PowerRoom {
  /** Up to full power; negative when more is asked than there is. */
  readonly stopsInHand: number
  /** Down to the lowest; negative when the head cannot go that low. */
  readonly stopsAboveLowest: number
  readonly isInRange: boolean
}

/** How far an energy lies from both ends. A millionth of a stop of rounding is not out of range. */
export function powerRoom(range: PowerRange, energyJoules: number): PowerRoom {
  const stopsInHand = stopsFromTimes(range.fullEnergyJoules / energyJoules)
  const stopsAboveLowest = stopsFromTimes(energyJoules / range.lowestEnergyJoules)
  return { stopsInHand, stopsAboveLowest, isInRange: stopsInHand > -1e-6 && stopsAboveLowest > -1e-6 }
}

/**
 * t0.1 at part power, in seconds. A head that lowers its voltage and a head that cuts its tail behave differently: taken
 * as falling with the square root of energy. Common practice, no source; the head's manual overrules.
 */
export function t01AtEnergy(range: PowerRange, t01SecondsAtFull: number, energyJoules: number): number {
  return t01SecondsAtFull * Math.sqrt(Math.min(1, energyJoules / range.fullEnergyJoules))
}

/** Recycle time at part power: the charger refills in proportion, but never in under a twentieth of a second. */
export function recycleAtEnergy(range: PowerRange, recycleSecondsAtFull: number, energyJoules: number): number {
  const share = Math.min(1, energyJoules / range.fullEnergyJoules)
  return Math.max(Math.min(0.05, recycleSecondsAtFull), recycleSecondsAtFull * share)
}
