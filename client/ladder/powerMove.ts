import { fitToHead } from '../../shared-core/plan/fitToHead.ts'
import type { Head } from '../../shared-core/plan/schema/kit.ts'

/** What a head needs to say about its power to be turned up and down. */
export type PowerRange = Pick<Head, 'fullEnergyJoules' | 'lowestEnergyJoules' | 'stepStops'>

/** Where a hand has taken a head's power. */
export interface PowerMove {
  /** On the head's own step and within its range. */
  readonly energyJoules: number
  /** Stops asked for past full power (positive) or under the lowest (negative); 0 within the range. */
  readonly pastRangeStops: number
}

/** The power nearest to `stops` more than `energyJoules` that this head can be set to. */
export function movedPower(head: PowerRange, energyJoules: number, stops: number): PowerMove {
  const asked = energyJoules * 2 ** stops
  const pastFull = Math.log2(asked / head.fullEnergyJoules)
  const pastLowest = Math.log2(asked / head.lowestEnergyJoules)
  return { energyJoules: fitToHead(head, asked), pastRangeStops: pastFull > 0 ? pastFull : Math.min(0, pastLowest) }
}

/** One touch of a key: `stops` up or down, and at least one step of the head, or the key would seem dead. */
export function nudgedPower(head: PowerRange, energyJoules: number, stops: number): PowerMove {
  const leastStops = Math.sign(stops) * Math.max(Math.abs(stops), head.stepStops)
  return movedPower(head, energyJoules, leastStops)
}
