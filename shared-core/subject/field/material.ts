import { curve, ramp } from './primitives.ts'
import { EYE, almond, upperLidEdge } from './eye.ts'
import { lipShare } from './mouth.ts'
import { insideHairline, strandPlace } from './hair.ts'
import { ear } from './ear.ts'
import { CLOTH_TOP, SHOULDER_LIFT, folded } from './field.ts'
import { clothTone, neckOpening } from './cloth.ts'
import { noise } from './noise.ts'

/** What the surface is made of: shares from 0 to 1. Lips, brow and lash tint the skin; hair and cloth cover it. */
export interface SurfaceMaterial {
  lips: number
  brow: number
  lash: number
  hair: number
  cloth: number
}

/** How bright the cloth is at a point beside its plain colour, in mm from the point between the eyes. */
export function clothToneMm(x: number, y: number, z: number): number {
  return clothTone(folded(x), y, z - SHOULDER_LIFT)
}

/** Line of the brow and half its height, by the way from its inner to its outer end. */
const browLine = curve([[-0.1, 15.9], [0, 16.2], [0.3, 17.3], [0.6, 18.1], [0.8, 17.2], [1, 14.8], [1.1, 13.4]])
const browHalf = curve([[-0.1, 3], [0.1, 3.5], [0.4, 3.4], [0.7, 2.6], [1, 1], [1.1, 0.6]])

function browShare(x: number, y: number, z: number): number {
  if (y > -45 || x < 5 || x > 58 || z < 2 || z > 30) return 0
  const t = (x - 9.5) / 42.5
  const off = z - browLine(t)
  // Hairs stand steep at the inner end and lie down towards the outer one.
  const lean = 0.25 + 1.5 * ramp(0, 0.7, t)
  const acrossHairs = (x - lean * off) / Math.sqrt(1 + lean * lean)
  const hairs = 0.34 * noise(acrossHairs * 1.25, off * 0.22 + 5) + 0.2 * noise(acrossHairs * 2.6 + 31, off * 0.3)
  const edge = Math.abs(off) / browHalf(t) + hairs
  const ends = ramp(-0.1, 0.2, t + 0.1 * hairs) * (1 - ramp(0.86, 1.06, t))
  return (0.88 + 0.25 * hairs) * (1 - ramp(0.3, 1.3, edge)) * ends
}

function lashShare(x: number, y: number, z: number): number {
  if (y > EYE.y + 2 || Math.abs(x - EYE.x) > 18 || Math.abs(z) > 12) return 0
  const gap = almond(x, z)
  const upper = ramp(-1.2, 1.2, z + 1.2 - 0.08 * (x - EYE.x + 14))
  const outer = ramp(-14, 6, x - EYE.x)
  const width = 0.7 + (0.3 + 0.8 * outer) * upper
  return (1 - ramp(width * 0.5, width + 0.7, gap)) * (0.3 + 0.25 * outer + (0.65 - 0.25 * outer) * upper)
}

/** Hair thins out over a few millimetres of skin, strand by strand. */
function hairShare(x: number, y: number, z: number): number {
  if (z < -95) return 0
  const { across, along } = strandPlace(x, y, z)
  const strands = 2.2 * noise(across * 1.7, along * 0.05) + 1.8 * noise(across * 0.55 + 40, along * 0.05)
  const inside = insideHairline(x, y, z) + strands
  if (inside < -4) return 0
  return ramp(-4, 9, inside) * besideEar(x, y, z)
}

/** Is the surface in the hair, whatever its single strands do at the edge? For what shines, not for what is seen. */
export function isInHairMm(x: number, y: number, z: number): boolean {
  return z > -95 && insideHairline(x, y, z) > 0 && besideEar(x, y, z) > 0.5
}

function besideEar(x: number, y: number, z: number): number {
  return Math.abs(x) > 60 && z < 20 ? ramp(0.3, 1.6, ear(Math.abs(x), y, z)) : 1
}

/** Material of a point on the surface (not on an eyeball), in mm from the point between the eyes. */
export function materialMm(x: number, y: number, z: number): SurfaceMaterial {
  const ax = folded(x)
  return {
    lips: lipShare(ax, y, z),
    brow: browShare(ax, y, z),
    lash: lashShare(ax, y, z),
    hair: hairShare(x, y, z),
    cloth: z < CLOTH_TOP ? 1 - ramp(-0.5, 0.9, neckOpening(ax, y, z - SHOULDER_LIFT)) : 0,
  }
}

/** What is seen at a point of an eyeball: shares of iris and pupil, the rest is white; and how bright it is beside plain. */
export interface EyeMaterial {
  iris: number
  pupil: number
  tone: number
}

/** Material of a point on an eyeball, in mm from the point between the eyes. */
export function eyeMaterialMm(x: number, z: number): EyeMaterial {
  const ax = Math.abs(x)
  const dx = ax - EYE.x
  const dz = z - EYE.z
  const r = Math.sqrt(dx * dx + dz * dz)
  const pupil = 1 - ramp(EYE.pupilRadius - 0.25, EYE.pupilRadius + 0.25, r)
  const iris = (1 - ramp(EYE.irisRadius - 0.45, EYE.irisRadius + 0.35, r)) * (1 - pupil)
  return { iris, pupil, tone: lidShade(ax, z) * (iris > 0 ? irisTone(dx, dz, r) * iris + (1 - iris) : 1) }
}

/** Fibres, paler towards the pupil, and the dark ring at the iris's rim. */
function irisTone(dx: number, dz: number, r: number): number {
  const spokes = noise((dx / Math.max(0.5, r)) * 9 + 20, (dz / Math.max(0.5, r)) * 9 + 50)
  return (1.15 - 0.25 * ramp(2.4, 4.4, r) + 0.2 * spokes) * (1 - 0.6 * ramp(EYE.irisRadius - 1.5, EYE.irisRadius - 0.2, r))
}

/** Lids and lashes shade what lies just below them: finer than the mesh's own shadow holds. */
function lidShade(x: number, z: number): number {
  const rim = 0.4 + 0.52 * ramp(-0.2, 2, -almond(x, z))
  return rim * (0.55 + 0.45 * ramp(0, 4.2, upperLidEdge(x) - z))
}
