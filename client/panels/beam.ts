import { distance, subtract, type Vector } from '../../shared-core/arithmetic/vector.ts'
import { vectorOf } from '../../shared-core/set/emitter.ts'
import type { Place } from '../../shared-core/plan/schema/quantities.ts'

/** How far a beam is tipped from level, in degrees; down is negative. */
export function tiltDegreesOf(from: Place, aim: Place): number {
  const [x, y, z] = subtract(vectorOf(aim), vectorOf(from))
  return (Math.atan2(z, Math.hypot(x, y)) * 180) / Math.PI
}

/** The place on the line from `target` through `from` that lies `distanceMetres` from the target. */
export function atDistance(from: Place, target: Vector, distanceMetres: number): Place {
  const place = vectorOf(from)
  const now = distance(place, target)
  const [x, y, z] = now > 1e-6 ? subtract(place, target).map((part) => part / now) : [0, -1, 0]
  const at = (start: number, part: number | undefined) => Math.round((start + (part ?? 0) * distanceMetres) * 1e4) / 1e4
  return { xMetres: at(target[0], x), yMetres: at(target[1], y), zMetres: at(target[2], z) }
}
