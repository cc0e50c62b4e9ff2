import { apertureValue } from '../exposure/aperture.ts'
import { powerRoom } from '../exposure/power.ts'
import { timesFromStops } from '../arithmetic/portable.ts'
import { formatPower } from '../plan/entry/power.ts'
import { stopsInWords } from '../plan/entry/stops.ts'
import { fitToHead } from '../plan/fitToHead.ts'
import type { Head } from '../plan/schema/kit.ts'

/** What to turn at a head so that the meter shows what is planned. */
export interface Turn {
  /** Up (positive) or down, as wanted; 0 when the reading is nearest where it is. */
  readonly stops: number
  /** The nearest power that this head can be set to. */
  readonly energyJoules: number
  readonly from: string
  readonly to: string
  /** Still missing (positive) or too much after that. */
  readonly leftStops: number
  /** "down 0.4: −2.0 → −2.4" */
  readonly words: string
}

/** Stops by which a reading lies over (positive) what was planned; both exact f-numbers. */
export function stopsOver(readFNumber: number, plannedFNumber: number): number {
  return apertureValue(readFNumber) - apertureValue(plannedFNumber)
}

/**
 * What to turn, in the head's own notation and steps. Past either end of its range the nearest end, and what is then
 * still missing is said.
 * @param energyJoules the head was at when it was read
 */
export function turnFor(head: Head, energyJoules: number, readFNumber: number, plannedFNumber: number): Turn {
  const stops = -stopsOver(readFNumber, plannedFNumber)
  const wanted = energyJoules * timesFromStops(stops)
  const isNear = Math.abs(stops) < head.stepStops / 2
  const energyAfter = isNear ? energyJoules : fitToHead(head, wanted)
  const { stopsInHand, stopsAboveLowest } = powerRoom(head, wanted)
  const from = formatPower(energyJoules, head)
  const to = formatPower(energyAfter, head)
  const leftStops = stopsInHand < -head.stepStops / 2 ? -stopsInHand : stopsAboveLowest < -head.stepStops / 2 ? stopsAboveLowest : 0
  const direction = stops > 0 ? 'up' : 'down'
  const amount = Math.abs(stops).toFixed(1)
  const words = isNear ? 'leave it as it is'
    : leftStops > 0 ? `up ${amount}, but full power is ${stopsInWords(leftStops)} short: ${from} → ${to}`
    : leftStops < 0 ? `down ${amount}, but the lowest power is still ${stopsInWords(leftStops)} too much: ${from} → ${to}`
    : `${direction} ${amount}: ${from} → ${to}`
  return { stops: isNear ? 0 : stops, energyJoules: energyAfter, from, to, leftStops, words }
}
