import type { Emitter } from '../set/emitter.ts'
import type { Plate } from './platesBetween.ts'

/** What a ray that an eye mirrors meets. A ray is its place and unit direction, six numbers; distances are in metres. */
type Ray = Float64Array

/** How far away a ray meets a front from before it; Infinity for a miss. */
export function distanceToFront({ axis, centre, across, up, outlineOnFront }: Emitter, ray: Ray): number {
  const slope = ray[3]! * axis[0] + ray[4]! * axis[1] + ray[5]! * axis[2]
  if (slope >= -1e-9) return Infinity
  const [x, y, z] = [centre[0] - ray[0]!, centre[1] - ray[1]!, centre[2] - ray[2]!]
  const distance = (x * axis[0] + y * axis[1] + z * axis[2]) / slope
  if (distance <= 0) return Infinity
  const [ox, oy, oz] = [distance * ray[3]! - x, distance * ray[4]! - y, distance * ray[5]! - z]
  const u = ox * across[0] + oy * across[1] + oz * across[2]
  const v = ox * up[0] + oy * up[1] + oz * up[2]
  for (let i = 0; i < outlineOnFront.length; i++) {
    const [au, av] = outlineOnFront[i]!
    const [bu, bv] = outlineOnFront[(i + 1) % outlineOnFront.length]!
    if ((bu - au) * (v - av) - (bv - av) * (u - au) < 0) return Infinity
  }
  return distance
}

/** How far away a ray passes the middle of a bare tube, a ball to it; Infinity for a miss. */
export function distanceToTube({ centre, radiusMetres }: Emitter, ray: Ray): number {
  const [x, y, z] = [centre[0] - ray[0]!, centre[1] - ray[1]!, centre[2] - ray[2]!]
  const along = x * ray[3]! + y * ray[4]! + z * ray[5]!
  const asideSquared = x * x + y * y + z * z - along * along
  return along > 0 && asideSquared <= radiusMetres * radiusMetres ? along : Infinity
}

/** Whether a ray meets a plate before it has gone so far. */
export function isPlateMet({ centre, normal, corners }: Plate, ray: Ray, distance: number): boolean {
  const slope = ray[3]! * normal[0] + ray[4]! * normal[1] + ray[5]! * normal[2]
  if (Math.abs(slope) < 1e-9) return false
  const [px, py, pz] = [ray[0]!, ray[1]!, ray[2]!]
  const to = ((centre[0] - px) * normal[0] + (centre[1] - py) * normal[1] + (centre[2] - pz) * normal[2]) / slope
  if (to <= 0 || to >= distance) return false
  const [x, y, z] = [px + to * ray[3]!, py + to * ray[4]!, pz + to * ray[5]!]
  // Inside an outline that turns one way a place lies to the same side of every edge.
  let side = 0
  for (let i = 0; i < corners.length; i += 3) {
    const next = (i + 3) % corners.length
    const [ax, ay, az] = [corners[i]!, corners[i + 1]!, corners[i + 2]!]
    const [ex, ey, ez] = [corners[next]! - ax, corners[next + 1]! - ay, corners[next + 2]! - az]
    const turn = normal[0] * (ey * (z - az) - ez * (y - ay)) + normal[1] * (ez * (x - ax) - ex * (z - az)) +
      normal[2] * (ex * (y - ay) - ey * (x - ax))
    if (turn * side < 0) return false
    if (turn !== 0) side = turn
  }
  return true
}
