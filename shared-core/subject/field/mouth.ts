import { noise } from './noise.ts'
import { curve, dab, ramp, blend, ellipsoid, stroke } from './primitives.ts'

/** Heights of the red of the lips above and below the line where they meet, by distance from the middle, in mm. */
const upperHeight = curve([[0, 6.5], [5, 7.3], [11, 6.6], [17, 5], [22, 2.7], [25.5, 0.4]])
const lowerHeight = curve([[0, 9.2], [6, 9.2], [12, 8.4], [18, 6.2], [22.5, 3.3], [25.5, 0.5]])
/** Where the lips meet: height, and how far back the row of teeth has curved. */
const meetingHeight = curve([[0, -70.6], [7, -69.6], [16, -70.0], [22, -69.2], [26, -68.3], [34, -67.6]])
const archBack = curve([[0, 0], [8, 1.2], [16, 5.2], [24, 12], [32, 21]])

const LIPS_FRONT = -103

/** How much of the surface is the red of the lips, 0 to 1. `x` folded. */
export function lipShare(x: number, y: number, z: number): number {
  if (x > 28 || y > -80) return 0
  const v = z - meetingHeight(x)
  const height = v > 0 ? upperHeight(x) : lowerHeight(x)
  return (1 - ramp(-1.3, 1.1, Math.abs(v) - height)) * (1 - ramp(22.5, 26.5, x))
}

/** How bright the red of the lips is beside plain: fine lines down it, and the shade where they meet. */
export function lipTone(x: number, z: number): number {
  const v = Math.abs(z - meetingHeight(Math.abs(x)))
  // None in the very middle, where lips are metered: there the plain colour stands.
  return (1 + 0.09 * noise(x * 0.9, v * 0.12) * ramp(1, 5, Math.abs(x))) * (1 - 0.6 * (1 - ramp(0.1, 1.2, v)))
}

/** Muzzle, lips, the groove below the nose and the line of the mouth, worked into the head. */
export function withMouth(d: number, x: number, y: number, z: number): number {
  if (z > -30 || z < -100 || y > -60 || x > 44) return d
  let face = d
  const muzzle = ellipsoid(x, y, z, 0, -76, -67, 27, 24, 25)
  face = blend(face, muzzle, 12)
  const v = z - meetingHeight(x)
  const forward = LIPS_FRONT + archBack(x) - y
  const lip = (height: number, centre: number, depth: number, push: number): number => {
    const r = Math.max(0.9, height * 0.62)
    const pv = (v - centre) / r
    const ps = (forward - push) / depth
    const q = Math.sqrt(pv * pv + ps * ps)
    return (q - 1) * Math.min(r, depth) * 0.85
  }
  const fade = 1 - ramp(16, 27, x)
  const upper = lip(upperHeight(x), upperHeight(x) * 0.45, 3 + 3.6 * fade, -3 - 1.6 * (1 - fade))
  const lower = lip(lowerHeight(x), -lowerHeight(x) * 0.46, 3 + 3.8 * fade, -4.2 - 0.8 * (1 - fade))
  const across = Math.max(0, x - 25.5)
  face = blend(face, blend(upper, lower, 4) + across, 3.6)
  const seam = v / 1.9
  if (seam * seam < 1) face += (0.3 + 0.3 * fade) * (1 - seam * seam) * (1 - seam * seam) * (1 - ramp(22, 28.5, x))
  face += 0.7 * dab(x, y, z, 28.5, -89, -69, 8, 10, 8)
  face += 1.1 * stroke(x, y, z, 0, -107, -50, 0, -107, -60, 3.8)
  face -= 0.5 * stroke(x, y, z, 4.8, -105, -50, 5.6, -105, -61, 3)
  face += 1.4 * dab(x, y, z, 0, -100, -86.5, 17, 12, 6)
  return face
}
