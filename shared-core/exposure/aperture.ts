import { power, stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'

/** Apertures: each stop is a factor of the square root of 2 in f-number (ISO 517; ANSI PH2.5). */

/** Aperture value Av = 2 log2 N. `fNumber` > 0. */
export function apertureValue(fNumber: number): number {
  return 2 * stopsFromTimes(fNumber)
}

/** f-number of an aperture value. */
export function fNumberOfApertureValue(av: number): number {
  return timesFromStops(av / 2)
}

/** What is engraved at full stops from f/0.7, aperture value -1. */
const FULL_STOPS = [0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64, 90, 128] as const
const HALF_STOPS = [0.8, 1.2, 1.7, 2.4, 3.3, 4.8, 6.7, 9.5, 13, 19, 27, 38, 54, 76, 108] as const
const THIRD_STOPS = [
  [0.8, 0.9], [1.1, 1.2], [1.6, 1.8], [2.2, 2.5], [3.2, 3.5], [4.5, 5], [6.3, 7.1], [9, 10], [13, 14], [18, 20],
  [25, 29], [36, 40], [51, 57], [72, 80], [101, 114],
] as const

export interface EngravedAperture {
  /** As engraved. */
  readonly nominal: number
  /** What the engraving stands for. */
  readonly exact: number
}

export type ApertureStep = 'full' | 'half' | 'third'

/** The series from f/0.7 to f/128 as lenses and cameras name it. */
export function apertureSeries(step: ApertureStep): readonly EngravedAperture[] {
  const between = (i: number): readonly number[] => {
    if (step === 'full' || i === FULL_STOPS.length - 1) return []
    return step === 'half' ? [HALF_STOPS[i]!] : THIRD_STOPS[i]!
  }
  return FULL_STOPS.flatMap((full, i) =>
    [full, ...between(i)].map((nominal, part, parts) => ({
      nominal, exact: fNumberOfApertureValue(i - 1 + part / parts.length),
    })))
}

/**
 * The exact f-number behind what a person or camera calls it: "11" stands for 11.31. What no series engraves is taken as
 * said. A name that two series share (13: third of a stop 12.70, half 13.45) is taken from the thirds.
 */
export function exactFNumber(said: number): number {
  for (const step of ['full', 'third', 'half'] as const) {
    const engraved = apertureSeries(step).find(({ nominal }) => Math.abs(nominal - said) < 1e-6)
    if (engraved) return engraved.exact
  }
  return said
}

export interface FullAndTenths {
  /** Nominal full stop: 8, 11, 16. */
  readonly fullFNumber: number
  /** 0-9 tenths of a stop past it. */
  readonly tenths: number
}

/**
 * An f-number as a flash meter shows it: the full stop below, and tenths past it. Rounded to the nearest tenth; outside
 * f/0.7 - f/128 the series goes on by doubling.
 */
export function fullAndTenths(fNumber: number): FullAndTenths {
  const tenthsFromOne = Math.round(apertureValue(fNumber) * 10)
  const fullStops = Math.floor(tenthsFromOne / 10)
  return { fullFNumber: nominalFullStop(fullStops), tenths: tenthsFromOne - 10 * fullStops }
}

function nominalFullStop(av: number): number {
  const engraved = FULL_STOPS[av + 1]
  if (engraved !== undefined) return engraved
  // Past the series the names follow the two families 1, 2, 4 ... and 1.4, 2.8, 5.6 ... without rounding.
  return av % 2 === 0 ? power(2, av / 2) : 1.4 * power(2, (av - 1) / 2)
}
