import { incidentLuxSeconds } from '../exposure/meter.ts'
import type { PlanEdit } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { FiredPart, Reading } from '../rig/readings.ts'
import { afterMeasuring, independent, meanOf, varianceOf, type Belief } from './estimate.ts'
import { luxSecondsWith, stopsOfLuxSeconds } from './expected.ts'
import { learnedPath, pieceInKit, piecesOf, readPieceKey, spreadBefore, SPREADS_IN_PLUS_MINUS, UNIT_SPREAD_STOPS, type PieceKey, type PieceKind } from './pieces.ts'

/** A hand-held reading: the meter's step of a tenth, and the hand (common practice, no source). */
const READING_SPREAD_STOPS = 0.05
/** Degrees of freedom of Student's t for what readings scatter: small numbers let single bad ones count little. */
const TAIL_FREEDOM = 4
/** Outside of what 99 in 100 readings would be (two-sided normal): held back until somebody says that it is so. */
const HELD_BACK_DEVIATIONS = 2.5758
const ROUNDS_MOST = 40
const SETTLED_STOPS = 1e-10

/** What was learned of one piece of the kit. */
export interface Correction {
  readonly key: PieceKey
  readonly kind: PieceKind
  readonly id: string
  /** Null when the kit has lost it. */
  readonly name: string | null
  /** Known before any reading of this job, and now; whole, to be shown rounded. */
  readonly startStops: number
  readonly stops: number
  readonly plusMinusBefore: number
  readonly plusMinusStops: number
  /** Readings it took part in that were learned from. */
  readonly readings: number
}

/** How sure each light of each look is, before any reading and now. */
export interface LightDoubt {
  readonly lookId: string
  readonly lightId: string
  readonly letter: string
  /** What its kit corrects it by, in all. */
  readonly stops: number
  readonly plusMinusBefore: number
  readonly plusMinusStops: number
}

/** What became of one reading. */
export interface Judged {
  readonly key: string
  readonly reading: Reading
  readonly state: 'learned' | 'held-back' | 'accepted' | 'withdrawn'
  /** Read over (positive) what all other readings lead to expect, and the standard deviation of that. */
  readonly surpriseStops: number
  readonly deviationStops: number
}

export interface Learned {
  readonly corrections: readonly Correction[]
  readonly lights: readonly LightDoubt[]
  readonly readings: readonly Judged[]
  /** Brings the plan's learned figures up to this; null when they are. */
  readonly edit: PlanEdit | null
  /** Stops by which a light is now believed to give more than predicted with nothing learned, its own unit included. */
  correctionOf(lookId: string, part: Pick<FiredPart, 'lightId' | 'headId' | 'modifierId' | 'gelIds'>): number
  /** ± in stops of an exposure that these lights make together. */
  plusMinusOf(lookId: string, fired: readonly FiredPart[], ambientLuxSeconds?: number): number
}

/**
 * What the readings teach of heads, modifiers and sheets. In stops, a light differs from its prediction by what its head,
 * its modifier, each of its sheets and it itself (this unit, put up here) differ by: unknowns that start at what is
 * known of them, with the spread of their kind. Each reading measures the sum for the lights that fired; readings of
 * several lights are linearised at the estimate until it settles (Gauss-Newton; B. M. Bell and F. W. Cathey, "The
 * iterated Kalman filter update as a Gauss-Newton method", IEEE Trans. Autom. Control 38 (1993) 294). Scatter is
 * Student's t, by reweighting (K. L. Lange, R. J. A. Little and J. M. G. Taylor, "Robust statistical modeling using the
 * t distribution", J. Am. Stat. Assoc. 84 (1989) 881). A reading which the others contradict, or which no kit would
 * differ by, is held back, the worst first, until none is left (data snooping: W. Baarda, A Testing Procedure for Use
 * in Geodetic Networks, 1968). The order of the readings does not matter.
 */
export function learn(plan: Plan, readings: Readonly<Record<string, Reading>>): Learned {
  const entries = Object.entries(readings).sort(([a], [b]) => (a < b ? -1 : 1))
  const unknowns = unknownsOf(plan, entries)
  const active = entries.filter(([, reading]) => reading.withdrawn === null)
  const rows = active.map(([key, reading]) => rowOf(unknowns, key, reading))
  const kept = keepWhatFits(unknowns, rows)
  const { belief } = kept
  const judged = entries.map(([key, reading]): Judged => {
    const row = rows.find((one) => one.key === key)
    if (!row) return { key, reading, state: 'withdrawn', surpriseStops: 0, deviationStops: 0 }
    const { surprise, deviation } = kept.surpriseOf(row)
    const state = reading.accepted ? 'accepted' : kept.rows.includes(row) ? 'learned' : 'held-back'
    return { key, reading, state, surpriseStops: surprise, deviationStops: deviation }
  })
  const corrections = unknowns.pieces.map((key) => correctionOf(plan, unknowns, belief, kept.rows, key))
  return {
    corrections,
    lights: doubtsOf(plan, unknowns, belief),
    readings: judged,
    edit: editOf(plan, corrections),
    correctionOf: (lookId, part) => meanOf(belief, unknowns.weightsOf(lookId, part)),
    plusMinusOf: (lookId, fired, ambientLuxSeconds = 0) =>
      SPREADS_IN_PLUS_MINUS * Math.sqrt(varianceOf(belief, linearised(unknowns, belief, lookId, { fired, ambientLuxSeconds }).weights)),
  }
}

/** What is estimated: pieces of the kit first, then each light that was read or stands in a look, as itself. */
interface Unknowns {
  readonly pieces: readonly PieceKey[]
  readonly before: Belief
  weightsOf(lookId: string, part: Pick<FiredPart, 'lightId' | 'headId' | 'modifierId' | 'gelIds'>): Float64Array
}

function unknownsOf(plan: Plan, entries: readonly (readonly [string, Reading])[]): Unknowns {
  const read = entries.flatMap(([, { lookId, fired }]) => fired.map((part) => ({ lookId, part })))
  const standing = Object.entries(plan.looks).flatMap(([lookId, look]) =>
    Object.entries(look.lights).map(([lightId, light]) => ({ lookId, part: { ...light, lightId } })))
  const all = [...read, ...standing]
  const pieces = [...new Set(all.flatMap(({ part }) => piecesOf(part)))].sort()
  const units = [...new Set(all.map(({ lookId, part }) => unitKey(lookId, part.lightId)))].sort()
  const indexOf = new Map([...pieces, ...units].map((key, i) => [key, i]))
  const starts = startsOf(plan, entries)
  return {
    pieces,
    before: independent(
      [...pieces.map((key) => starts(key)), ...units.map(() => 0)],
      [...pieces.map((key) => spreadBefore(plan, key)), ...units.map(() => UNIT_SPREAD_STOPS)],
    ),
    weightsOf(lookId, part) {
      const weights = new Float64Array(indexOf.size)
      for (const key of [...piecesOf(part), unitKey(lookId, part.lightId)]) {
        const i = indexOf.get(key)
        if (i !== undefined) weights[i]! += 1
      }
      return weights
    },
  }
}

function unitKey(lookId: string, lightId: string): string {
  return `unit:${lookId}.${lightId}`
}

/**
 * What was known of a piece before this job's readings: as the first reading that used it says, else what the plan has.
 * Withdrawn readings still say it.
 */
export function startsOf(plan: Plan, entries: readonly (readonly [string, Reading])[]): (key: PieceKey) => number {
  const inTime = [...entries].sort(([keyA, a], [keyB, b]) => a.by.atMs - b.by.atMs || (keyA < keyB ? -1 : 1))
  return (key) => {
    const first = inTime.find(([, { startStops }]) => Object.hasOwn(startStops, key))
    return first?.[1].startStops[key] ?? pieceInKit(plan, key)?.learnedStops ?? 0
  }
}

interface Row {
  readonly key: string
  readonly reading: Reading
  readonly readStops: number
  at(belief: Belief): Linearised
}

interface Linearised {
  readonly stops: number
  readonly weights: Float64Array
}

function rowOf(unknowns: Unknowns, key: string, reading: Reading): Row {
  const { fNumber, isoSpeed, constant, lookId } = reading
  return {
    key,
    reading,
    readStops: stopsOfLuxSeconds(incidentLuxSeconds(fNumber, isoSpeed, constant)),
    at: (belief) => linearised(unknowns, belief, lookId, reading),
  }
}

/** What is expected of several lights together, and how it goes with each unknown: by each light's share. */
function linearised(unknowns: Unknowns, belief: Belief, lookId: string, lit: { readonly fired: readonly FiredPart[]; readonly ambientLuxSeconds: number }): Linearised {
  const whole = luxSecondsWith(lit, (part) => meanOf(belief, unknowns.weightsOf(lookId, part)))
  const weights = new Float64Array(belief.mean.length)
  for (const part of lit.fired) {
    const own = unknowns.weightsOf(lookId, part)
    const share = whole > 0 ? luxSecondsWith({ fired: [part], ambientLuxSeconds: 0 }, () => meanOf(belief, own)) / whole : 0
    for (let i = 0; i < weights.length; i++) weights[i]! += share * own[i]!
  }
  return { stops: stopsOfLuxSeconds(whole), weights }
}

interface Fit {
  readonly belief: Belief
  readonly rows: readonly Row[]
  /** A reading against what all others lead to expect. */
  surpriseOf(row: Row): { readonly surprise: number; readonly deviation: number }
}

/** Leaves out the worst of what does not fit, one at a time; whatever fits in the end after all comes back. */
function keepWhatFits(unknowns: Unknowns, rows: readonly Row[]): Fit {
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

function correctionOf(plan: Plan, unknowns: Unknowns, belief: Belief, rows: readonly Row[], key: PieceKey): Correction {
  const i = unknowns.pieces.indexOf(key)
  const n = belief.mean.length
  const plusMinus = ({ covariance }: Belief) => SPREADS_IN_PLUS_MINUS * Math.sqrt(Math.max(0, covariance[i * n + i]!))
  return {
    key,
    ...readPieceKey(key),
    name: pieceInKit(plan, key)?.name ?? null,
    startStops: unknowns.before.mean[i]!,
    stops: belief.mean[i]!,
    plusMinusBefore: plusMinus(unknowns.before),
    plusMinusStops: plusMinus(belief),
    readings: rows.filter(({ reading }) => reading.fired.some((part) => piecesOf(part).includes(key))).length,
  }
}

function doubtsOf(plan: Plan, unknowns: Unknowns, belief: Belief): LightDoubt[] {
  return Object.entries(plan.looks).flatMap(([lookId, { lights }]) =>
    Object.entries(lights).map(([lightId, light]): LightDoubt => {
      const weights = unknowns.weightsOf(lookId, { ...light, lightId })
      const plusMinus = (of: Belief) => SPREADS_IN_PLUS_MINUS * Math.sqrt(varianceOf(of, weights))
      return {
        lookId,
        lightId,
        letter: light.letter,
        stops: meanOf(belief, weights),
        plusMinusBefore: plusMinus(unknowns.before),
        plusMinusStops: plusMinus(belief),
      }
    }))
}

/** Differences below this are not worth an edit: two devices may differ in the last bits. */
const SAME_STOPS = 1e-6

function editOf(plan: Plan, corrections: readonly Correction[]): PlanEdit | null {
  const changes = corrections.flatMap(({ key, stops }) => {
    const piece = pieceInKit(plan, key)
    const within = Math.min(Math.max(stops, -20), 20)
    return piece && Math.abs(piece.learnedStops - within) > SAME_STOPS ? [{ path: learnedPath(key), set: within }] : []
  })
  return changes.length > 0 ? { name: 'learnFromMeter', changes } : null
}
