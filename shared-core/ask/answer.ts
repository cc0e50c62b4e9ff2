import type { PlanEdit } from '../plan/edit.ts'
import type { Prediction } from '../predict/prediction.ts'
import type { Want } from './want.ts'

export type WayKind = 'powers' | 'iso' | 'distance' | 'modifier' | 'gel' | 'head'

/** One way to get what is wanted: a single undoable edit, what it changes, and what it costs. */
export interface Way {
  /** What kind of way it is, so that three answers differ in kind. */
  readonly by: WayKind
  /** "Bring C in to 1.60 m": the heart of it in one line. */
  readonly title: string
  /** Each move somebody must make, in words. */
  readonly moves: readonly string[]
  /** In words, worst first: "C has only 0.2 stop in hand", "ISO 400: 1.0 stop more noise". */
  readonly costs: readonly string[]
  readonly edit: PlanEdit
  /** In the order of the wants; then the levels that had to be kept because the camera was changed. */
  readonly outcomes: readonly Outcome[]
  readonly meetsAll: boolean
  /** Of the look with the edit applied, by the real prediction. */
  readonly prediction: Prediction
}

/** How one want comes out. */
export interface Outcome {
  readonly want: Want
  readonly isMet: boolean
  /**
   * In stops for levels and truth, CIEDE2000 for colours, stops missing for white, sheets for gels; 0 when exact.
   * Signed where it has a sense: positive is too bright.
   */
  readonly miss: number
  /** "camera-right cheek −2.0 (wanted −1.7)" */
  readonly words: string
}

export const limitKinds = [
  'power', 'lowest-power', 'room', 'ceiling', 'frame', 'near-face', 'gel', 'kit', 'other-lights',
] as const

/** What stands in the way of one way to have it. */
export interface Limit {
  readonly kind: (typeof limitKinds)[number]
  /** The light, gel or piece it binds; null when it is the set as a whole. */
  readonly aboutId: string | null
  /** By how much, in stops, where it can be said so. */
  readonly byStops: number | null
  /** "C is out of power by 0.6 stop" */
  readonly words: string
}

/** Up to three ways, best first. Where none meets everything, the first is the nearest there is. */
export interface Answer {
  readonly ways: readonly Way[]
  /** What stops the powers from doing it alone; null when they can. */
  readonly limit: Limit | null
  /** What stopped the other ways that were tried: "C would be 12 cm into the camera-right wall". */
  readonly furtherLimits: readonly Limit[]
  /** False when it was called off before all was tried. */
  readonly isComplete: boolean
}
