import { profileAt } from '../photometry/angularProfile.ts'
import { discCosineIntegral } from '../photometry/disc.ts'
import { polygonView, viewPolygon } from '../photometry/polygon.ts'
import type { Emitter } from '../set/emitter.ts'
import type { Occluders } from '../set/occluders.ts'
import { DIRECTION_SIDE } from '../subject/asset/octahedron.ts'
import { WORDS } from '../subject/asset/selfShadow.ts'
import type { SeenSurface } from './seenSurface.ts'
import type { Shine } from './shine.ts'
import { turnedPoints } from './turnedPoints.ts'

const HALF_SIDE = DIRECTION_SIDE / 2
const LAST = DIRECTION_SIDE - 1
/** Nearer than so many radii of a front the sum over its points strays from the closed form by more than half a percent. */
const NEAR_IN_RADII = 1.6

/**
 * Adds the exposure that one shine puts on each slot of the surface, in 1/m2 for one lumen-second of the bare tube.
 *
 * The sum over fixed points of radiance x area x cosines / distance squared, each point asked whether the subject (by
 * its precomputed directions) or a plate is in the way. Where the horizon cuts the front, or the front is near, the
 * closed form of the front is taken instead, times the ratio that shadow and angle make of it at the points.
 * @param plates what flat things may be in the way; null for none
 */
export function addSurfaceLight(into: Float32Array, shine: Shine, seen: SeenSurface, plates: Occluders | null): void {
  const { points, emitter, profile, owner, radiusMetres } = shine
  const { count, strength, xyz: setXyz, cellMetres } = points
  const { restPositions, restNormals, positions, vertices, steps } = seen
  const { selfShadow } = seen.subject.asset
  const isTube = emitter?.front.shape === 'sphere'
  const frames = turnedPoints(seen, points, shine.axis, shine.centre)
  const [cx, cy, cz] = shine.centre
  for (let slot = 0; slot < seen.count; slot++) {
    const { xyz, axis, centre } = frames[steps[slot]!]!
    const px = restPositions[3 * slot]!
    const py = restPositions[3 * slot + 1]!
    const pz = restPositions[3 * slot + 2]!
    const nx = restNormals[3 * slot]!
    const ny = restNormals[3 * slot + 1]!
    const nz = restNormals[3 * slot + 2]!
    const dx = centre[0] - px
    const dy = centre[1] - py
    const dz = centre[2] - pz
    const height = -(dx * axis[0] + dy * axis[1] + dz * axis[2])
    if (height <= 0 && !isTube) continue
    // How far the shine reaches above and below its middle, as seen along the normal.
    const rise = dx * nx + dy * ny + dz * nz
    const slant = nx * axis[0] + ny * axis[1] + nz * axis[2]
    const reach = radiusMetres * Math.sqrt(Math.max(0, 1 - slant * slant))
    if (rise <= -reach) continue
    let blockers = 0
    if (plates !== null) {
      blockers = plates.consider(positions[3 * slot]!, positions[3 * slot + 1]!, positions[3 * slot + 2]!, cx, cy, cz, radiusMetres, owner)
    }
    const words = vertices[slot]! * WORDS
    const heightSquared = height * height
    let open = 0
    let lit = 0
    for (let k = 0; k < count; k++) {
      const x = xyz[3 * k]! - px
      const y = xyz[3 * k + 1]! - py
      const z = xyz[3 * k + 2]! - pz
      const above = x * nx + y * ny + z * nz
      if (above <= 0) continue
      const inverseSquare = 1 / (x * x + y * y + z * z)
      const weight = above * inverseSquare * strength[k]! * (isTube ? Math.sqrt(inverseSquare) : height * inverseSquare)
      open += weight
      // The cell of the direction on the unfolded octahedron, as cellOf does.
      const ax = x < 0 ? -x : x
      const ay = y < 0 ? -y : y
      const inverseSize = 1 / (ax + ay + (z < 0 ? -z : z))
      let u = x * inverseSize
      let v = y * inverseSize
      if (z < 0) {
        u = (1 - ay * inverseSize) * (x < 0 ? -1 : 1)
        v = (1 - ax * inverseSize) * (y < 0 ? -1 : 1)
      }
      let column = ((u + 1) * HALF_SIDE) | 0
      let row = ((v + 1) * HALF_SIDE) | 0
      if (column > LAST) column = LAST
      if (row > LAST) row = LAST
      if ((selfShadow[words + row]! >>> column) & 1) continue
      let given = weight
      if (profile !== null) given *= profileAt(profile, Math.sqrt(Math.min(1, heightSquared * inverseSquare)))
      if (blockers > 0 && given > 0) given *= plates!.visibleShare(setXyz[3 * k]!, setXyz[3 * k + 1]!, setXyz[3 * k + 2]!, cellMetres)
      lit += given
    }
    if (lit <= 0) continue
    if (emitter !== null && !isTube && (rise < reach || dx * dx + dy * dy + dz * dz < NEAR_IN_RADII * NEAR_IN_RADII * radiusMetres * radiusMetres)) {
      into[slot]! += (lit / open) * closedForm(emitter, seen, slot, height)
    } else {
      into[slot]! += lit
    }
  }
}

/** Exposure by a front without shadow, lobe or grid. */
function closedForm(emitter: Emitter, seen: SeenSurface, slot: number, height: number): number {
  const px = seen.positions[3 * slot]!
  const py = seen.positions[3 * slot + 1]!
  const pz = seen.positions[3 * slot + 2]!
  const v = 3 * seen.vertices[slot]!
  const { normals } = seen.subject
  const nx = normals[v]!
  const ny = normals[v + 1]!
  const nz = normals[v + 2]!
  viewPolygon(emitter.corners, emitter.outline.length, px, py, pz, nx, ny, nz)
  const { isCut, aboveHorizon } = polygonView
  if (emitter.front.shape !== 'disc' || isCut || aboveHorizon <= 0) return emitter.axialRadiancePerLumenSecond * aboveHorizon
  const { axis, centre } = emitter
  const x = px - centre[0] - height * axis[0]
  const y = py - centre[1] - height * axis[1]
  const z = pz - centre[2] - height * axis[2]
  const offset = Math.sqrt(x * x + y * y + z * z)
  const cosToDisc = -(nx * axis[0] + ny * axis[1] + nz * axis[2])
  const cosToAxis = offset > 0 ? -(nx * x + ny * y + nz * z) / offset : 0
  return emitter.axialRadiancePerLumenSecond *
    discCosineIntegral(emitter.front.widthMetres / 2, height, offset, cosToDisc, cosToAxis)
}

