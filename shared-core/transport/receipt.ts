import type { Vector } from '../arithmetic/vector.ts'
import type { OwnShadow } from '../set/ownShadow.ts'

/** A place where light is received. */
export interface Receiver {
  /** Of a place on the subject's skin; absent for all else. */
  readonly ownShadow?: OwnShadow
  readonly place: Vector
  /** Unit normal. */
  readonly facing: Vector
  /** Surface the receiver lies on (see `Surface.id`): it neither blocks nor lights it. Null for the subject and the air. */
  readonly surfaceId: string | null
}

/**
 * Light received for each lumen-second of the bare tube, in lux-seconds per lumen-second (1/m2): multiply by joules and
 * efficacy.
 */
export interface Receipt {
  /** On the surface itself, or a flat disc facing out. */
  readonly flat: number
  /** A dome facing out. */
  readonly domeOut: number
  /** A dome turned to the light's front. */
  readonly domeToLight: number
}

export const NOTHING_RECEIVED: Receipt = { flat: 0, domeOut: 0, domeToLight: 0 }
