import { profileAt } from '../photometry/angularProfile.ts'
import { SKIN_SURFACE_REFLECTANCE } from '../spectra/surface/fresnel.ts'
import type { Sheen } from './material.ts'
import { MESH_HAIR, type SeenSurface } from './seenSurface.ts'
import { lobe } from './sheenLobe.ts'
import type { Shine, ShinePoints } from './shine.ts'
import type { ShineOnSurface } from './surfaceLight.ts'
import { turnedPoints } from './turnedPoints.ts'

/** Spread of a strand's highlight along it: standard deviation of the sine of the half-angle (Marschner et al. 2003, some 5-10 degrees). */
const STRAND_SPREAD = 0.16
/** Refractive index of hair, 1.55: reflectance straight ahead. */
const STRAND_REFLECTANCE = 0.0465

/**
 * Adds what each slot mirrors of one shine towards the camera, as the exposure of a perfect white that would look the
 * same. The lobe is far wider than a shadow's edge, so what is in the way weighs on it as a whole.
 * @param points of the shine
 * @param sheens by mesh material
 */
export function addSheen(
  into: Float32Array, { visible }: ShineOnSurface, shine: Shine, points: ShinePoints, seen: SeenSurface, sheens: readonly Sheen[],
): void {
  const { profile, isTube, radiusMetres } = shine
  const { count, strength, cellMetres } = points
  const { restPositions, restNormals, restSights, facing, materials, steps, strands } = seen
  const frames = turnedPoints(seen, points, shine.axis, shine.centre)
  const mostInverseSquare = isTube ? 1 / (radiusMetres * radiusMetres) : Infinity
  for (let slot = 0; slot < seen.count; slot++) {
    if (visible[slot]! <= 0) continue
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
    const height = -(dx * axis[0] + dy * axis[1] + dz * axis[2])
    // Each point stands for its cell: the lobe is widened by what the cell's width does to the half-vector.
    const alphaSquared = alpha * alpha + (cellMetres * cellMetres) / (24 * (dx * dx + dy * dy + dz * dz))
    const isHair = material === MESH_HAIR
    let sum = 0
    for (let k = 0; k < count; k++) {
      const x = xyz[3 * k]! - px
      const y = xyz[3 * k + 1]! - py
      const z = xyz[3 * k + 2]! - pz
      const above = x * nx + y * ny + z * nz
      if (above <= 0) continue
      const inverseSquare = 1 / (x * x + y * y + z * z)
      const inverse = Math.sqrt(inverseSquare)
      const cosAtFront = isTube ? 1 : height * inverse
      let given = above * inverse * cosAtFront * Math.min(inverseSquare, mostInverseSquare) * strength[k]!
      if (profile !== null) given *= profileAt(profile, Math.min(1, cosAtFront))
      const hx = x * inverse + vx
      const hy = y * inverse + vy
      const hz = z * inverse + vz
      const half = 1 / Math.sqrt(hx * hx + hy * hy + hz * hz)
      // The half-vector divides the angle between light and eye: its cosine to the eye is half its own length.
      const vh = 0.5 / half
      if (isHair) {
        sum += given * strandLobe((hx * strands[at]! + hy * strands[at + 1]! + hz * strands[at + 2]!) * half, vh)
      } else {
        sum += given * lobe(alphaSquared, above * inverse, nv, Math.min(1, (hx * nx + hy * ny + hz * nz) * half), vh)
      }
    }
    into[slot] = into[slot]! + sum * sheenStrength * visible[slot]!
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
