/** How loud a snag is: it cannot work or is unsafe; it will show in the picture; good to know. */
export type Severity = 'stop' | 'look' | 'note'

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
}

export const snagRules = [
  'out-of-power', 'too-strong', 'white-out', 'white-too-hot', 'uneven-background', 'spill', 'second-colour', 'gel-level',
  'haze', 'ambient', 'sync', 'flash-duration', 'aperture', 'depth-of-field', 'fall-off',
  'outside-room', 'in-frame', 'lens-sees-light', 'front-not-filling', 'backdrop-not-filling', 'head-near-face',
  'channel-clips', 'gel-heat', 'kit-short',
] as const
export type SnagRule = (typeof snagRules)[number]
