import type { PlanEdit } from '../plan/edit.ts'
import type { Acceptance, Severity } from '../plan/schema/look.ts'

export type { Severity } from '../plan/schema/look.ts'

/** The snag's action as something the screen can do at once: one edit, one undo step. */
export interface SnagMend {
  /** What a button says: "Lower B by 0.4". */
  readonly words: string
  readonly edit: PlanEdit
}

/** A check that is not quiet: its number, its threshold, and one action that mends it. */
export interface Snag {
  /** Stable for the same matter on the same thing: what acceptance and tests hang on, e.g. `out-of-power:c`. */
  readonly key: string
  readonly rule: SnagRule
  readonly severity: Severity
  /** One line: what is wrong, with its number. */
  readonly message: string
  /** One line: the single best thing to do. */
  readonly action: string
  readonly value: number
  readonly threshold: number
  readonly unit: string
  /** Ids of lights, pieces or areas to point at. */
  readonly about: readonly string[]
  /** Where the action, or the first half of it, can be done in the plan by itself. */
  readonly mend?: SnagMend
}

/** A snag that somebody wants so: it is on record and does not nag. */
export interface AcceptedSnag extends Snag {
  readonly acceptance: Acceptance
}

export const snagRules = [
  'out-of-power', 'too-strong', 'white-out', 'white-too-hot', 'uneven-background', 'spill', 'second-colour', 'gel-level',
  'haze', 'ambient', 'ambient-colour', 'sync', 'flash-duration', 'aperture', 'depth-of-field', 'fall-off',
  'outside-room', 'in-frame', 'lens-sees-light', 'front-not-filling', 'backdrop-not-filling', 'head-near-face',
  'channel-clips', 'gel-heat', 'kit-short', 'key-distance', 'key-too-near', 'paper-distance', 'gel-cut', 'same-name-gel', 'head-colour',
  'circuit-load', 'battery', 'sandbag', 'walkway', 'safety-cable', 'must-read-true', 'set-up-order', 'white-balance',
  'catchlights', 'opposite-hues',
] as const
export type SnagRule = (typeof snagRules)[number]
