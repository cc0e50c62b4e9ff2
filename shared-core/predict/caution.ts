/**
 * The usual care at the moment a piece is placed. Never a claim of safety: each text defers to the equipment's manual,
 * the studio's rules, local code and licensed practice.
 */
export interface Caution {
  /** Stable: `hot-gel:<lightId>`. */
  readonly key: string
  readonly kind: CautionKind
  readonly message: string
  readonly about: readonly string[]
}

export const cautionKinds = [
  'hot-gel', 'tall-stand', 'boom', 'flash-near-eyes', 'circuit', 'capacitor', 'large-modifier', 'photosensitive',
] as const
export type CautionKind = (typeof cautionKinds)[number]
