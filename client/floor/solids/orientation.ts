import { direction, subtract, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Place } from '../../../shared-core/plan/schema/quantities.ts'
import { frontAxes, vectorOf } from '../../../shared-core/set/emitter.ts'

/** How a thing stands in the set: three directions at right angles, each of length 1. */
export interface Orientation {
  /** The way its front looks. */
  readonly axis: Vector
  /** To the right of somebody looking along the axis. */
  readonly right: Vector
  readonly up: Vector
}

/** Of a thing at `place` aimed at `aim`, rolled about its axis (positive is clockwise seen from behind). */
export function aimedOrientation(place: Place, aim: Place, rollDegrees = 0): Orientation {
  const axis = direction(subtract(vectorOf(aim), vectorOf(place)))
  const { across, up } = frontAxes(axis, rollDegrees)
  return { axis, right: across, up }
}

/** Degrees above level of a direction. */
export function elevationDegrees(axis: Vector): number {
  return (Math.atan2(axis[2], Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1])) * 180) / Math.PI
}

/** The direction on the floor in which a vector points, as `facingDegrees` counts: 0 to the camera, 90 to camera right. */
export function facingDegreesOf(vector: Vector): number {
  return (Math.atan2(vector[0], -vector[1]) * 180) / Math.PI
}
