import { ramp } from './primitives.ts'
import { EYE, almond } from './eye.ts'
import { lipShare } from './mouth.ts'
import { insideHairline, strandPlace } from './hair.ts'
import { ear } from './ear.ts'
import { CLOTH_TOP, SHOULDER_LIFT, folded } from './field.ts'
import { neckOpening } from './cloth.ts'
import { noise } from './noise.ts'

/** What the surface is made of: shares from 0 to 1. Lips, brow and lash tint the skin; hair and cloth cover it. */
export interface SurfaceMaterial {
  lips: number
  brow: number
  lash: number
  hair: number
  cloth: number
}

function browShare(x: number, y: number, z: number): number {
  if (y > -45 || x < 6 || x > 56 || z < 2 || z > 30) return 0
  const t = (x - 9) / 43
  const middle = 13 + 13.5 * t * (1.18 - t) - 1.6 * t * t
  const half = 4.2 * (1 - 0.72 * t * t) * ramp(-0.08, 0.18, t)
  const hairs = 0.25 * noise(x * 0.9 + z * 1.3, z * 0.35 - x * 0.25)
  const edge = Math.abs(z - middle) / Math.max(0.6, half) + hairs
  return 0.85 * (1 - ramp(0.45, 1.25, edge)) * ramp(-0.1, 0.15, t) * (1 - ramp(0.9, 1.06, t))
}

function lashShare(x: number, y: number, z: number): number {
  if (y > EYE.y + 2 || Math.abs(x - EYE.x) > 18 || Math.abs(z) > 12) return 0
  const gap = almond(x, z)
  const upper = z > -1.2 + 0.04 * (x - EYE.x + 14)
  const outer = ramp(-14, 6, x - EYE.x)
  const width = upper ? 0.9 + 0.7 * outer : 0.5
  return (1 - ramp(width * 0.6, width + 0.5, gap)) * (upper ? 0.9 : 0.35 * outer)
}

/** Hair thins out over a few millimetres of skin, strand by strand. */
function hairShare(x: number, y: number, z: number): number {
  if (z < -95) return 0
  const { across, along } = strandPlace(x, y, z)
  const inside = insideHairline(x, y, z) + 3 * noise(across * 0.9, along * 0.07)
  if (inside < -2.5) return 0
  const onEar = Math.abs(x) > 60 && z < 20 ? ramp(0.3, 1.6, ear(Math.abs(x), y, z)) : 1
  return ramp(-2.5, 4.5, inside) * onEar
}

/** Material of a point on the surface (not on an eyeball), in mm from the point between the eyes. */
export function materialMm(x: number, y: number, z: number): SurfaceMaterial {
  const ax = folded(x)
  return {
    lips: lipShare(ax, y, z),
    brow: browShare(ax, y, z),
    lash: lashShare(ax, y, z),
    hair: hairShare(x, y, z),
    cloth: z < CLOTH_TOP && neckOpening(ax, y, z - SHOULDER_LIFT) < 0.3 ? 1 : 0,
  }
}

export type EyePart = 'white' | 'iris' | 'pupil'

/** Part of an eyeball at a point on it. */
export function eyePartMm(x: number, z: number): EyePart {
  const dx = Math.abs(x) - EYE.x
  const dz = z - EYE.z
  const r = Math.sqrt(dx * dx + dz * dz)
  return r < EYE.pupilRadius ? 'pupil' : r < EYE.irisRadius ? 'iris' : 'white'
}
