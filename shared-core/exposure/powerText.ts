import { power } from '../arithmetic/portable.ts'
import { type PowerRange, rangeStops, stopsFromFull } from './power.ts'

export type PowerNotation = 'fraction' | 'stops-from-full' | 'scale-of-ten' | 'joules'

/** A number without a trailing ".0", with a true minus sign left to the screen. */
function tenthsText(value: number): string {
  const rounded = Math.round(value * 10) / 10
  return (Object.is(rounded, -0) ? 0 : rounded).toFixed(1)
}

/**
 * Power as this head's panel writes it.
 *
 * - fraction: the nearest halving at or above, and tenths of a stop below it: "1/16 -0.1"
 * - stops-from-full: "-2.5", full is "0.0"
 * - scale-of-ten: full is "10.0" and each whole number a stop
 * - joules: "250 J", with a decimal below 10
 *
 * @param energyJoules > 0
 */
export function powerText(range: PowerRange, notation: PowerNotation, energyJoules: number): string {
  const stops = stopsFromFull(range, energyJoules)
  switch (notation) {
    case 'fraction':
      return fractionText(stops)
    case 'stops-from-full':
      return tenthsText(stops)
    case 'scale-of-ten':
      return tenthsText(10 + stops)
    case 'joules':
      return `${energyJoules < 10 ? tenthsText(energyJoules) : Math.round(energyJoules)} J`
  }
}

function fractionText(stops: number): string {
  const tenths = Math.round(stops * 10)
  const halvings = Math.max(0, Math.floor(-tenths / 10))
  const rest = tenths + 10 * halvings
  const fraction = halvings === 0 ? '1/1' : `1/${power(2, halvings).toFixed(0)}`
  if (rest === 0) return fraction
  return `${fraction} ${rest > 0 ? '+' : '-'}${tenthsText(Math.abs(rest) / 10)}`
}

/** The lowest setting in the head's own notation, for messages. */
export function lowestPowerText(range: PowerRange, notation: PowerNotation): string {
  return powerText(range, notation, range.fullEnergyJoules * power(2, -rangeStops(range)))
}
