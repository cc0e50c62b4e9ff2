import { profileAt } from '../photometry/angularProfile.ts'
import { discCosineIntegral } from '../photometry/disc.ts'
import { polygonView, viewPolygon } from '../photometry/polygon.ts'
import type { Emitter } from '../set/emitter.ts'
import { DIRECTION_SIDE } from '../subject/asset/octahedron.ts'
import { WORDS } from '../subject/asset/selfShadow.ts'
import type { PlateShadows } from './plateShadows.ts'
import { REGION_REACH_METRES, type SeenSurface } from './seenSurface.ts'
import type { Shine } from './shine.ts'
import { ShineMasks } from './shineMasks.ts'
import { turnedPoints } from './turnedPoints.ts'

const HALF_SIDE = DIRECTION_SIDE / 2
const LAST = DIRECTION_SIDE - 1
/** Nearer than so many radii of a front the sum over its points strays from the closed form by more than half a percent. */
const NEAR_IN_RADII = 1.6

/** One shine on the surface, by slot. */
export interface ShineOnSurface {
  /** Exposure in 1/m2 for one lumen-second of the bare tube. */
  readonly exposure: Float32Array
  /** Share of the shine above the horizon that the slot sees, 0-1, weighed by what it gives. */
  readonly visible: Float32Array
}

/**
 * The exposure that one shine puts on each slot: the sum over fixed points of radiance x area x cosines / distance
 * squared, each point asked whether the subject (by its precomputed directions) or a plate is in the way, unless nothing
 * can be. Slots that see all of it take the few points of an exact rule. Where the front is near, its closed form is taken instead, times the
 * ratio that shadow and angle make of it.
 * @param plates what flat things may be in the way of the same shine and its points; null for none
 */
export function lightSurface(into: ShineOnSurface, shine: Shine, seen: SeenSurface, plates: PlateShadows | null): void {
  const { points, cutPoints, openPoints, emitter, isTube, profile, radiusMetres } = shine
  const { restPositions, restNormals, positions, vertices, steps, regionOf } = seen
  const { selfShadow } = seen.subject.asset
  const { raised } = seen.openness
  const { exposure, visible } = into
  const frames = turnedPoints(seen, points, shine.axis, shine.centre)
  const cutFrames = cutPoints === points ? frames : turnedPoints(seen, cutPoints, shine.axis, shine.centre)
  const openFrames = openPoints === points ? frames : turnedPoints(seen, openPoints, shine.axis, shine.centre)
  const masks = new ShineMasks(seen, frames)
  const { words: maskWords, bits } = masks
  const near = NEAR_IN_RADII * NEAR_IN_RADII * radiusMetres * radiusMetres
  // As for the numbers: a tube's surface is as near as one can come to it.
  const mostInverseSquare = isTube ? 1 / (radiusMetres * radiusMetres) : Infinity
  exposure.fill(0)
  visible.fill(0)
  for (let slot = 0; slot < seen.count; slot++) {
    const frame = frames[steps[slot]!]!
    const { axis, centre } = frame
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
    const words = vertices[slot]! * WORDS
    const firstMask = WORDS * regionOf[slot]!
    const lastMask = firstMask + masks.countOf(regionOf[slot]!)
    let someShadow = 0
    let someOpen = 0
    for (let m = firstMask; m < lastMask; m++) {
      const word = words + maskWords[m]!
      someShadow |= raised[word]! & bits[m]!
      someOpen |= ~selfShadow[word]! & bits[m]!
    }
    if (someOpen === 0) continue
    // The plane of a tube is only where its points lie: behind it a plate has nowhere to throw its shadow.
    const isShaded = plates !== null && height > 0 &&
      plates.from(positions[3 * slot]!, positions[3 * slot + 1]!, positions[3 * slot + 2]!, regionOf[slot]!, REGION_REACH_METRES)
    const isOpen = someShadow === 0 && !isShaded
    const isWhole = isOpen && rise >= reach
    const { count, strength } = isWhole ? openPoints : isOpen ? cutPoints : points
    const { xyz } = isWhole ? openFrames[steps[slot]!]! : isOpen ? cutFrames[steps[slot]!]! : frame
    const heightSquared = height * height
    let bare = 0
    let open = 0
    let lit = 0
    for (let k = 0; k < count; k++) {
      const x = xyz[3 * k]! - px
      const y = xyz[3 * k + 1]! - py
      const z = xyz[3 * k + 2]! - pz
      const above = x * nx + y * ny + z * nz
      if (above <= 0) continue
      let inverseSquare = 1 / (x * x + y * y + z * z)
      if (inverseSquare > mostInverseSquare) inverseSquare = mostInverseSquare
      const weight = above * inverseSquare * strength[k]! * (isTube ? Math.sqrt(inverseSquare) : height * inverseSquare)
      bare += weight
      let given = weight
      if (profile !== null) given *= profileAt(profile, Math.sqrt(Math.min(1, heightSquared * inverseSquare)))
      open += given
      if (isOpen) continue
      if (someShadow !== 0) {
        // The cell of the direction on the unfolded octahedron, as cellOf finds it.
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
      }
      lit += isShaded ? given * plates.share(k) : given
    }
    if (isOpen) lit = open
    if (lit <= 0) continue
    visible[slot] = lit / open
    exposure[slot] = emitter !== null && dx * dx + dy * dy + dz * dz < near
      ? (lit / bare) * closedForm(emitter, seen, slot, height) : lit
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
