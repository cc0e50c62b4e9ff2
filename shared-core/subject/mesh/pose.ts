import { cosine, sine } from '../../arithmetic/portable.ts'
import { ramp } from '../field/primitives.ts'
import { EYE_HEIGHT } from '../field/field.ts'

/** Where the head turns and tilts on the neck, in metres of the subject's own space. */
export const NECK_PIVOT = [0, 0.014, 1.488] as const

/** How much of the head's movement a point takes part in: 0 at the collar, 1 at the jaw and the skull. */
export function headWeightAt(y: number, z: number): number {
  // The neck leans: its base is lower in front, at the notch of the collarbones, than at the nape.
  return ramp(-178, -98, z * 1000 - EYE_HEIGHT - 370 * y)
}

export interface HeadPose {
  /** Head turned to camera right, in radians, -pi/2 to pi/2. */
  readonly turnRadians: number
  /** Chin up is positive, -pi/4 to pi/4. */
  readonly tiltRadians: number
}

/**
 * Turns a point (`about` the pivot) or a direction (`about` the origin) of weight `weight` with the head, in place:
 * the three numbers at `at`. Each point turns by its share of the angle, so the neck twists without narrowing.
 */
export function turnWithHead(
  values: Float32Array | Float64Array, at: number, weight: number, pose: HeadPose, about: readonly [number, number, number],
): void {
  const tilt = pose.tiltRadians * weight
  const turn = pose.turnRadians * weight
  const [ct, st, cr, sr] = [cosine(tilt), sine(tilt), cosine(turn), sine(turn)]
  const x = values[at]! - about[0]
  const y0 = values[at + 1]! - about[1]
  const z0 = values[at + 2]! - about[2]
  const y = y0 * ct + z0 * st
  values[at] = x * cr - y * sr + about[0]
  values[at + 1] = x * sr + y * cr + about[1]
  values[at + 2] = z0 * ct - y0 * st + about[2]
}
