import { curve, ramp } from './primitives.ts'
import { noise } from './noise.ts'
import { cranium } from './skull.ts'

const degrees = (value: number): number => (value * Math.PI) / 180

/** Height of the hairline around the head, by the angle from straight ahead, in mm above the eyes. */
const hairline = curve([
  [0, 58], [degrees(14), 60], [degrees(28), 61], [degrees(38), 56], [degrees(46), 46], [degrees(54), 32], [degrees(62), 15],
  [degrees(70), -3], [degrees(79), -16], [degrees(88), -8], [degrees(96), 8], [degrees(108), 8],
  [degrees(118), -14], [degrees(128), -44], [degrees(150), -64], [Math.PI, -68],
])
/** Thickness of the hair in mm: on top by the place from front to back, at the ears by the angle. */
const topThickness = curve([[-110, 9], [-60, 13.5], [20, 12], [90, 8]])
const sideThickness = curve([[0, 10], [degrees(60), 4.5], [degrees(100), 4], [Math.PI, 5]])

/** Distance inside the hairline in mm, along the scalp; negative on bare skin. */
export function insideHairline(x: number, y: number, z: number): number {
  const angle = Math.atan2(Math.abs(x), -y)
  const line = hairline(angle)
  const step = 0.04
  const slope = (hairline(angle + step) - hairline(angle - step)) / (2 * step * 78)
  const above = z - line
  const near = above / Math.sqrt(1 + slope * slope)
  // Further in, the line's steps around the ear must not show as bars in the hair above.
  return near + (above - near) * ramp(8, 50, above)
}

export interface StrandPlace {
  /** Across the strands, in mm where they stand widest. */
  readonly across: number
  /** Along them, in mm. */
  readonly along: number
  /** How closely they crowd towards a pole: 1 at the crown, towards 0 where all meet. */
  readonly spread: number
}

/** Place of a point in the flow of the hair. */
export function strandPlace(x: number, y: number, z: number): StrandPlace {
  // Strands run as meridians from a pole at the forehead to one at the nape.
  const px = x
  const py = y * 0.86 - (z - 30) * 0.5
  const pz = (z - 30) * 0.86 + y * 0.5
  const fromAxis = Math.sqrt(px * px + (pz + 40) * (pz + 40))
  return { across: Math.atan2(px, pz + 40) * 95, along: py, spread: Math.min(1, fromAxis / 95) }
}

/** Distance to the hair's surface, in mm. `x` keeps its side: hair is not quite symmetrical. */
export function hair(x: number, y: number, z: number): number {
  const scalp = cranium(x, y, z)
  const inside = insideHairline(x, y, z)
  if (inside < -30 || scalp > 60) return Math.max(scalp, -inside)
  const angle = Math.atan2(Math.abs(x), -y)
  const high = ramp(10, 85, z)
  const swept = 1 + 0.22 * ramp(-60, 60, x) - 0.11
  const full = topThickness(y) * swept * high + sideThickness(angle) * (1 - high) * (0.45 + 0.55 * ramp(-70, 0, z))
  const grown = inside > 0 ? 1 - Math.exp(-(inside * inside) / (inside * 12 + 300)) : inside / 22
  const { across, along, spread } = strandPlace(x, y, z)
  const bend = 5 * noise(along * 0.018 + 7, across * 0.03)
  const parting = noise((across + bend) * 0.055, along * 0.006)
  const lock = 1.7 * Math.sqrt(parting * parting + 0.02) - 0.7
  const tress = noise((across + bend) * 0.16 + 17, along * 0.007)
  // Where strands crowd, ridges finer than the mesh would only be noise: they flatten out.
  const ridge = (2.4 * lock * high * ramp(0.2, 0.55, spread) + 0.9 * tress * ramp(0.45, 0.85, spread)) * Math.min(1, Math.max(0, inside / 25))
  return scalp - full * grown - ridge + (inside < 0 ? -inside * 0.15 : 0)
}
