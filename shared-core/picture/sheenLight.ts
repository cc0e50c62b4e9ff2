import { profileAt } from '../photometry/angularProfile.ts'
import { SKIN_SURFACE_REFLECTANCE } from '../spectra/surface/fresnel.ts'
import type { Occluders } from '../set/occluders.ts'
import { cellOf } from '../subject/asset/octahedron.ts'
import { WORDS } from '../subject/asset/selfShadow.ts'
import type { Sheen } from './material.ts'
import { MESH_HAIR, type SeenSurface } from './seenSurface.ts'
import { lobe } from './sheenLobe.ts'
import type { Shine } from './shine.ts'
import { turnedPoints } from './turnedPoints.ts'

/** Spread of a strand's highlight along it: standard deviation of the sine of the half-angle (Marschner et al. 2003, some 5-10 degrees). */
const STRAND_SPREAD = 0.16
/** Refractive index of hair, 1.55: reflectance straight ahead. */
const STRAND_REFLECTANCE = 0.0465

/**
 * Adds what each slot mirrors of one shine towards the camera, as the exposure of a perfect white that would look the
 * same. Only where `lit` says that some of the shine arrives.
 * @param sheens by mesh material
 */
export function addSheen(
  into: Float32Array, lit: Float32Array, shine: Shine, seen: SeenSurface, sheens: readonly Sheen[], plates: Occluders | null,
): void {
  const { mirrored, profile, owner, radiusMetres, emitter } = shine
  if (mirrored === null) return
  const { count, strength, xyz: setXyz, cellMetres } = mirrored
  const { restPositions, restNormals, restSights, facing, materials, positions, vertices, steps, strands } = seen
  const { selfShadow } = seen.subject.asset
  const isTube = emitter?.front.shape === 'sphere'
  const frames = turnedPoints(seen, mirrored, shine.axis, shine.centre)
  const [cx, cy, cz] = shine.centre
  for (let slot = 0; slot < seen.count; slot++) {
    if (lit[slot]! <= 0) continue
    const material = materials[slot]!
    const { alpha, strength: sheenStrength } = sheens[material]!
    if (sheenStrength === 0) continue
    const { xyz, axis, centre } = frames[steps[slot]!]!
    const at = 3 * slot
    const px = restPositions[at]!
    const py = restPositions[at + 1]!
    const pz = restPositions[at + 2]!
    const nx = restNormals[at]!
    const ny = restNormals[at + 1]!
    const nz = restNormals[at + 2]!
    const vx = restSights[at]!
    const vy = restSights[at + 1]!
    const vz = restSights[at + 2]!
    const nv = facing[slot]!
    const dx = centre[0] - px
    const dy = centre[1] - py
    const dz = centre[2] - pz
    const height = isTube ? 1 : -(dx * axis[0] + dy * axis[1] + dz * axis[2])
    // Each point stands for its cell: the lobe is widened by what the cell's width does to the half-vector.
    const alphaSquared = alpha * alpha + (cellMetres * cellMetres) / (12 * (dx * dx + dy * dy + dz * dz))
    const isHair = material === MESH_HAIR
    const tx = strands[at]!
    const ty = strands[at + 1]!
    const tz = strands[at + 2]!
    let blockers = 0
    if (plates !== null) {
      blockers = plates.consider(positions[at]!, positions[at + 1]!, positions[at + 2]!, cx, cy, cz, radiusMetres, owner)
    }
    const words = vertices[slot]! * WORDS
    let sum = 0
    for (let k = 0; k < count; k++) {
      const x = xyz[3 * k]! - px
      const y = xyz[3 * k + 1]! - py
      const z = xyz[3 * k + 2]! - pz
      const above = x * nx + y * ny + z * nz
      if (above <= 0) continue
      const cell = cellOf(x, y, z)
      if ((selfShadow[words + (cell >> 5)]! >>> (cell & 31)) & 1) continue
      const inverseSquare = 1 / (x * x + y * y + z * z)
      const inverse = Math.sqrt(inverseSquare)
      const cosAtFront = isTube ? 1 : height * inverse
      let given = above * inverse * cosAtFront * inverseSquare * strength[k]!
      if (profile !== null) given *= profileAt(profile, Math.min(1, cosAtFront))
      if (blockers > 0 && given > 0) given *= plates!.visibleShare(setXyz[3 * k]!, setXyz[3 * k + 1]!, setXyz[3 * k + 2]!, cellMetres)
      const lx = x * inverse
      const ly = y * inverse
      const lz = z * inverse
      const half = 1 / Math.sqrt((lx + vx) * (lx + vx) + (ly + vy) * (ly + vy) + (lz + vz) * (lz + vz))
      const vh = (1 + lx * vx + ly * vy + lz * vz) * half
      if (isHair) {
        const along = ((lx + vx) * tx + (ly + vy) * ty + (lz + vz) * tz) * half
        sum += given * strandLobe(along, vh)
      } else {
        const nh = ((lx + vx) * nx + (ly + vy) * ny + (lz + vz) * nz) * half
        sum += given * lobe(alphaSquared, above * inverse, nv, Math.min(1, nh), vh)
      }
    }
    into[slot]! += sum * sheenStrength
  }
}

/**
 * pi times a strand's first reflection: a cone about the strand, faded along it, a quarter of the light round each side
 * (Marschner et al. 2003, the R term). `along` is the half-vector's share along the strand.
 */
function strandLobe(along: number, vh: number): number {
  const one = 1 - vh
  const square = one * one
  const fresnel = STRAND_REFLECTANCE + (1 - STRAND_REFLECTANCE) * square * square * one
  const fall = along / STRAND_SPREAD
  return (Math.PI * fresnel * 0.25 * Math.exp(-0.5 * fall * fall)) / (Math.sqrt(2 * Math.PI) * STRAND_SPREAD)
}

/** Share of a strand's light that it mirrors, all directions together: a fair mean, since its lobe is wide. */
export const STRAND_MIRRORED = STRAND_REFLECTANCE + SKIN_SURFACE_REFLECTANCE / 2
