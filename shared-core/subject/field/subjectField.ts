import type { Vector } from '../../arithmetic/vector.ts'
import { EYE } from './eye.ts'
import { EYE_HEIGHT, subjectMm, surfaceMm } from './field.ts'
import { type EyeMaterial, type SurfaceMaterial, clothToneMm, eyeMaterialMm, materialMm } from './material.ts'
import { strandPlace } from './hair.ts'
import { lipTone } from './mouth.ts'

/**
 * The subject as a field, in its own space: metres for a stature of 1.74, facing -y, z up, the floor at 0 and the
 * origin under the ears. The figure's left and right are mirror images but for the hair.
 */
export const STATURE_METRES = 1.74

const mm = (metres: number): number => metres * 1000
const above = (z: number): number => z * 1000 - EYE_HEIGHT

/** Signed distance in metres to skin, hair, cloth or eyeball; negative inside. A lower bound away from the surface. */
export function distanceAt(x: number, y: number, z: number): number {
  return subjectMm(mm(x), mm(y), above(z)) / 1000
}

/** As `distanceAt`, for the surface without the two eyeballs: the one that is meshed. */
export function surfaceDistanceAt(x: number, y: number, z: number): number {
  return surfaceMm(mm(x), mm(y), above(z)) / 1000
}

/** Material shares at a point of the surface. */
export function materialAt(x: number, y: number, z: number): SurfaceMaterial {
  return materialMm(mm(x), mm(y), above(z))
}

/** How bright the lips are at a point beside their plain colour. */
export function lipToneAt(x: number, z: number): number {
  return lipTone(mm(x), above(z))
}

/** How bright the cloth is at a point beside its plain colour. */
export function clothToneAt(x: number, y: number, z: number): number {
  return clothToneMm(mm(x), mm(y), above(z))
}

/** Material of an eyeball at a point on one. */
export function eyeMaterialAt(x: number, z: number): EyeMaterial {
  return eyeMaterialMm(mm(x), above(z))
}

/**
 * Place in the flow of the hair, in metres across the strands and along them: lines of equal `across` are strands.
 * `spread` falls below 1 where they crowd: draw no finer detail there than the picture can hold.
 */
export function strandAt(x: number, y: number, z: number): { across: number, along: number, spread: number } {
  const { across, along, spread } = strandPlace(mm(x), mm(y), above(z))
  return { across: across / 1000, along: along / 1000, spread }
}

/** Direction of the strands on the surface with the given normal: unit, from the face backwards. */
export function strandDirectionAt(x: number, y: number, z: number, normal: Vector): Vector {
  const step = 0.0005
  const here = strandAt(x, y, z).across
  const gx = strandAt(x + step, y, z).across - here
  const gy = strandAt(x, y + step, z).across - here
  const gz = strandAt(x, y, z + step).across - here
  const tx = gy * normal[2] - gz * normal[1]
  const ty = gz * normal[0] - gx * normal[2]
  const tz = gx * normal[1] - gy * normal[0]
  const size = Math.sqrt(tx * tx + ty * ty + tz * tz)
  if (size < 1e-12) return [0, 1, 0]
  const way = ty < 0 ? -1 : 1
  return [(way * tx) / size, (way * ty) / size, (way * tz) / size]
}

/** One eyeball for a true mirror: two spheres, all in metres. `side` -1 is camera left. */
export function eyeballOf(side: -1 | 1): { centre: Vector, radius: number, corneaCentre: Vector, corneaRadius: number } {
  const z = (EYE.z + EYE_HEIGHT) / 1000
  return {
    centre: [(side * EYE.x) / 1000, EYE.y / 1000, z],
    radius: EYE.radius / 1000,
    corneaCentre: [(side * EYE.x) / 1000, (EYE.y - EYE.corneaForward) / 1000, z],
    corneaRadius: EYE.corneaRadius / 1000,
  }
}
