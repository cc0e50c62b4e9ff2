import { blend, carve, dab, ellipsoid, limb } from './primitives.ts'

/** Bridge, tip, wings and a hint of nostrils worked into the head. */
export function withNose(d: number, x: number, y: number, z: number): number {
  if (z > 32 || z < -66 || y > -60) return d
  let face = d
  const root = limb(x, y, z, 0, -82, 8, 6.5, 0, -87.5, -7, 5.8)
  const bridge = limb(x, y, z, 0, -87.5, -7, 5.6, 0, -108, -34, 6.2)
  const sides = limb(x, y, z, 0, -79, -4, 8.5, 0, -91, -36, 11)
  let nose = blend(blend(root, bridge, 6), sides, 10)
  const tip = ellipsoid(x, y, z, 0, -109.2, -38, 7.4, 9, 7.4)
  nose = blend(nose, tip, 7)
  const wing = ellipsoid(x, y, z, 10.8, -97.5, -42, 5.6, 10, 6.4)
  nose = blend(nose, wing, 6)
  const septum = limb(x, y, z, 0, -99, -46, 4.2, 0, -107, -43.8, 4.6)
  nose = blend(nose, septum, 7)
  face = blend(face, nose, 7)
  const nostril = ellipsoid(x, y, z, 7, -103.2, -48.2, 2.6, 5, 2.8)
  face = carve(face, nostril, 2)
  face += 0.9 * dab(x, y, z, 17.5, -95, -37, 5, 9, 9)
  return face
}
