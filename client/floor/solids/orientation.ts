import { add, cross, direction, scale, subtract, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import { radiansFromDegrees } from '../../../shared-core/arithmetic/portable.ts'
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

/** Of a thing that faces a direction on the floor (0 to the camera, 90 to camera right) and is tipped up by `tiltDegrees`. */
export function facingOrientation(facingDegrees: number, tiltDegrees = 0): Orientation {
  const facing = radiansFromDegrees(facingDegrees)
  const tilt = radiansFromDegrees(tiltDegrees)
  const level: Vector = [Math.sin(facing), -Math.cos(facing), 0]
  const axis = add(scale(level, Math.cos(tilt)), [0, 0, Math.sin(tilt)])
  const right = direction(cross(level, [0, 0, 1]), [1, 0, 0])
  return { axis, right, up: cross(right, axis) }
}

/** Degrees above level of a direction. */
export function elevationDegrees(axis: Vector): number {
  return (Math.atan2(axis[2], Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1])) * 180) / Math.PI
}

/** The direction on the floor in which a vector points, as `facingDegrees` counts: 0 to the camera, 90 to camera right. */
export function facingDegreesOf(vector: Vector): number {
  return (Math.atan2(vector[0], -vector[1]) * 180) / Math.PI
}
