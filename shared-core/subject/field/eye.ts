import { blend, carve, dab, ramp, stroke } from './primitives.ts'

/** The eyeball, in mm of the head: a white sphere with the clear bulge of the cornea before the iris. */
export const EYE = {
  x: 31.5, y: -70.5, z: 0,
  radius: 12.2,
  corneaRadius: 7.8,
  /** How far the centre of the cornea's sphere lies before the centre of the white. */
  corneaForward: 5.6,
  irisRadius: 5.9,
  pupilRadius: 2.2,
} as const

const LID_RADIUS = 14.0
/** The corners of the almond, from the middle of the eyeball. */
const INNER = -14.6
const OUTER = 13.4
/** The socket goes no deeper than this far before the middle of the eyeball: the rest would never be seen. */
const SOCKET_DEPTH = 4

/** Signed distance, in the front view, from the almond between the lids: negative where the eye is open. */
export function almond(x: number, z: number): number {
  const dx = x - EYE.x
  const s = (2 * (dx - INNER)) / (OUTER - INNER) - 1
  const axis = -1.2 + 1.1 * (s + 1)
  const arch = 1 - s * s
  const upper = axis + 4.7 * arch * (1 - 0.22 * s) - 0.4 * arch * arch
  const lower = axis - 4.7 * arch * (1 + 0.3 * s)
  const slope = Math.min(1.2, Math.abs(0.75 * s))
  return Math.max(z - upper, lower - z) / Math.sqrt(1 + slope * slope)
}

/** Height of the upper lid's edge. */
export function upperLidEdge(x: number): number {
  const dx = x - EYE.x
  const s = Math.min(1.15, Math.max(-1.15, (2 * (dx - INNER)) / (OUTER - INNER) - 1))
  const arch = 1 - s * s
  return -1.2 + 1.1 * (s + 1) + 4.7 * arch * (1 - 0.22 * s) - 0.4 * arch * arch
}

export function eyeball(x: number, y: number, z: number): number {
  const dx = x - EYE.x
  const dy = y - EYE.y
  const dz = z - EYE.z
  const white = Math.sqrt(dx * dx + dy * dy + dz * dz) - EYE.radius
  const cy = dy + EYE.corneaForward
  const cornea = Math.sqrt(dx * dx + cy * cy + dz * dz) - EYE.corneaRadius
  return Math.min(white, cornea)
}

/** Sockets and lids worked into the head; the eyeball itself is a part of its own. */
export function withEyes(d: number, x: number, y: number, z: number): number {
  const dx = x - EYE.x
  const dy = y - EYE.y
  const dz = z - EYE.z
  if (dx * dx + dy * dy + dz * dz > 1600) return d
  let face = d
  face += 6.4 * dab(x, y, z, 31, -86, -1, 21, 26, 16)
  face += 2.4 * dab(x, y, z, 18.5, -86, 2, 11, 20, 13)
  const lid = Math.sqrt(dx * dx + dy * dy + dz * dz) - LID_RADIUS
  face = blend(face, lid, 6 + 6 * ramp(1, -14, z))
  // Past the outer corner the crease runs on level and fades.
  const edge = upperLidEdge(Math.min(x, EYE.x + 11))
  const crease = (z - edge - 4.4) / 2.6
  const along = ramp(-17, -9, dx) * (1 - ramp(5, 19, dx)) * ramp(9, -1, dy)
  if (dy < 9) {
    if (crease * crease < 1) face += 1.1 * (1 - crease * crease) * (1 - crease * crease) * along
    face -= 1.3 * stroke(x, y, z, 20, -87, 10.5, 50, -71, 8.5, 7) * (1 - ramp(8, 20, dx))
    face += 0.3 * stroke(x, y, z, 18, -84, -8, 30, -84, -14, 6)
  }
  const open = Math.max(almond(x, z), y - (EYE.y - SOCKET_DEPTH))
  const ball = Math.max(Math.sqrt(dx * dx + dy * dy + dz * dz) - EYE.radius - 0.3, y - (EYE.y - SOCKET_DEPTH))
  face = carve(face, open, 1.4)
  face = carve(face, ball, 0.5)
  const caruncle = Math.sqrt((dx + 12.6) * (dx + 12.6) + (dy + 5) * (dy + 5) + (dz + 1.2) * (dz + 1.2)) - 2.2
  return blend(face, caruncle, 1.5)
}
