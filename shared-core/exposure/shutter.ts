import { stopsFromTimes } from '../arithmetic/portable.ts'

/**
 * Flash duration and the shutter. A flash decays about exponentially; t0.5 and t0.1 are the times above a half and a
 * tenth of the peak (ISO 2827:1988).
 */

const T01_IN_TIME_CONSTANTS = Math.log(10)
const T05_IN_TIME_CONSTANTS = Math.LN2

/** t0.1 of a flash whose t0.5 is known. */
export function t01OfT05(t05Seconds: number): number {
  return (t05Seconds * T01_IN_TIME_CONSTANTS) / T05_IN_TIME_CONSTANTS
}

/** Share of a flash's light inside a window that opens at its peak, 0-1. */
export function shareCaught(t01Seconds: number, windowSeconds: number): number {
  return 1 - Math.exp((-windowSeconds * T01_IN_TIME_CONSTANTS) / t01Seconds)
}

/** The same as a loss in stops, negative. */
export function tailLossStops(t01Seconds: number, windowSeconds: number): number {
  return stopsFromTimes(shareCaught(t01Seconds, windowSeconds))
}

/** A radio link may need a notch longer than the camera's own limit: 1/160 for 1/200. Common practice, no source. */
const RADIO_DELAY_FACTOR = 1.25

export interface SyncVerdict {
  /** Shutter short enough to cut a band off the picture. */
  readonly cutsBand: boolean
  /** Within the limit, but closer than a radio link can be trusted with. */
  readonly radioDoubtful: boolean
  readonly shortestSafeSeconds: number
}

/** Whether a focal-plane shutter is fully open while the flash burns. Times in seconds. */
export function syncVerdict(shutterSeconds: number, syncSeconds: number, radioTrigger: boolean): SyncVerdict {
  // Cameras round 1/160 and 1/200 differently: a hundredth of slack keeps equal notches equal.
  const slack = 0.99
  const shortestSafeSeconds = radioTrigger ? syncSeconds * RADIO_DELAY_FACTOR : syncSeconds
  const cutsBand = shutterSeconds < syncSeconds * slack
  return {
    cutsBand,
    radioDoubtful: !cutsBand && radioTrigger && shutterSeconds < shortestSafeSeconds * slack,
    shortestSafeSeconds,
  }
}
