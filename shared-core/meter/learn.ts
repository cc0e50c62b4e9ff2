import type { PlanEdit } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { FiredPart, Reading } from '../rig/readings.ts'
import { meanOf, varianceOf, type Belief } from './estimate.ts'
import { keepWhatFits, linearised, rowOf, type Row } from './fit.ts'
import { learnedPath, pieceInKit, piecesOf, readPieceKey, SPREADS_IN_PLUS_MINUS, type PieceKey, type PieceKind } from './pieces.ts'
import { unknownsOf, type Unknowns } from './unknowns.ts'

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
