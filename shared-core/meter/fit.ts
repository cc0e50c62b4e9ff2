import { incidentLuxSeconds } from '../exposure/meter.ts'
import type { FiredPart, Reading } from '../rig/readings.ts'
import { afterMeasuring, meanOf, varianceOf, type Belief } from './estimate.ts'
import { luxSecondsWith, stopsOfLuxSeconds } from './expected.ts'
import type { Unknowns } from './unknowns.ts'

/** A hand-held reading: the meter's step of a tenth, and the hand (common practice, no source). */
const READING_SPREAD_STOPS = 0.05
/** Degrees of freedom of Student's t for what readings scatter: small numbers let single bad ones count little. */
const TAIL_FREEDOM = 4
/** Outside of what 99 in 100 readings would be (two-sided normal): held back until somebody says that it is so. */
const HELD_BACK_DEVIATIONS = 2.5758
const ROUNDS_MOST = 40
const SETTLED_STOPS = 1e-10

/** One reading as a measurement of the unknowns. */
export interface Row {
  readonly key: string
  readonly reading: Reading
  readonly readStops: number
  at(belief: Belief): Linearised
}

interface Linearised {
  readonly stops: number
  readonly weights: Float64Array
}

/** A reading, ready to be fitted. */
export function rowOf(unknowns: Unknowns, key: string, reading: Reading): Row {
  const { fNumber, isoSpeed, constant, lookId } = reading
  return {
    key,
    reading,
    readStops: stopsOfLuxSeconds(incidentLuxSeconds(fNumber, isoSpeed, constant)),
    at: (belief) => linearised(unknowns, belief, lookId, reading),
  }
}

/** What is expected of several lights together, and how it goes with each unknown: by each light's share. */
export function linearised(unknowns: Unknowns, belief: Belief, lookId: string, lit: { readonly fired: readonly FiredPart[]; readonly ambientLuxSeconds: number }): Linearised {
  const whole = luxSecondsWith(lit, (part) => meanOf(belief, unknowns.weightsOf(lookId, part)))
  const weights = new Float64Array(belief.mean.length)
  for (const part of lit.fired) {
    const own = unknowns.weightsOf(lookId, part)
    const share = whole > 0 ? luxSecondsWith({ fired: [part], ambientLuxSeconds: 0 }, () => meanOf(belief, own)) / whole : 0
    for (let i = 0; i < weights.length; i++) weights[i]! += share * own[i]!
  }
  return { stops: stopsOfLuxSeconds(whole), weights }
}

/** What is believed after some readings. */
export interface Fit {
  readonly belief: Belief
  readonly rows: readonly Row[]
  /** A reading against what all others lead to expect. */
  surpriseOf(row: Row): { readonly surprise: number; readonly deviation: number }
}

/** Leaves out the worst of what does not fit, one at a time; whatever fits in the end after all comes back. */
export function keepWhatFits(unknowns: Unknowns, rows: readonly Row[]): Fit {
  let fit = fitTo(unknowns, rows)
  for (let left = rows.length; left > 0; left--) {
    const worst = worstOf(unknowns, fit)
    if (worst === null) break
    fit = fitTo(unknowns, fit.rows.filter((row) => row !== worst))
  }
  const fitting = rows.filter((row) => fit.rows.includes(row) || isWithin(fit.surpriseOf(row)))
  return fitting.length === fit.rows.length ? fit : fitTo(unknowns, fitting)
}

function isWithin({ surprise, deviation }: { readonly surprise: number; readonly deviation: number }): boolean {
  return Math.abs(surprise) <= HELD_BACK_DEVIATIONS * deviation
}

/** Of two that contradict each other, the one further from what heads usually do is the worse. */
function worstOf(unknowns: Unknowns, fit: Fit): Row | null {
  let worst: Row | null = null
  let most = 0
  for (const row of fit.rows) {
    if (row.reading.accepted !== null) continue
    const found = fit.surpriseOf(row)
    if (isWithin(found)) continue
    const badness = Math.abs(found.surprise) / found.deviation + Math.abs(row.readStops - row.at(unknowns.before).stops)
    if (badness > most + 1e-9) [worst, most] = [row, badness]
  }
  return worst
}

const usualVariance = READING_SPREAD_STOPS * READING_SPREAD_STOPS

function fitTo(unknowns: Unknowns, rows: readonly Row[]): Fit {
  let belief = unknowns.before
  let variances = rows.map(() => usualVariance)
  for (let round = 0; round < ROUNDS_MOST; round++) {
    const lines = rows.map((row) => row.at(belief))
    const at = belief
    belief = rows.reduce((soFar, { readStops }, i) => {
      const { stops, weights } = lines[i]!
      return afterMeasuring(soFar, weights, readStops - stops + meanOf(at, weights), variances[i]!)
    }, unknowns.before)
    const settled = belief.mean.every((value, i) => Math.abs(value - at.mean[i]!) < SETTLED_STOPS)
    if (settled && round > 0) break
    const reached = belief
    variances = rows.map((row) => row.reading.accepted ? usualVariance : usualVariance / weightOf(row.readStops - row.at(reached).stops))
  }
  return { belief, rows, surpriseOf: (row) => surpriseOf(belief, rows, variances, row) }
}

/** How much a reading counts that is off by this much; never more than a plain one. */
function weightOf(offStops: number): number {
  return Math.min(1, (TAIL_FREEDOM + 1) / (TAIL_FREEDOM + (offStops * offStops) / usualVariance))
}

/** With the reading itself taken out again, in closed form (leave-one-out: D. A. Belsley, E. Kuh and R. E. Welsch, Regression Diagnostics, 1980). */
function surpriseOf(belief: Belief, rows: readonly Row[], variances: readonly number[], row: Row) {
  const { stops, weights } = row.at(belief)
  const known = varianceOf(belief, weights)
  const off = row.readStops - stops
  const index = rows.indexOf(row)
  if (index < 0) return { surprise: off, deviation: Math.sqrt(known + usualVariance) }
  const own = variances[index]!
  const left = Math.max(1 - known / own, 1e-9)
  return { surprise: off / left, deviation: Math.sqrt(own / left - own + usualVariance) }
}
