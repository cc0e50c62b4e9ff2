import { blend, dab, ellipsoid, limb, stroke } from './primitives.ts'

/** The scalp without features: what hair grows on and the face is built upon. `x` is folded to one side. */
export function cranium(x: number, y: number, z: number): number {
  const back = ellipsoid(x, y, z, 0, 17, 35, 74, 80, 79)
  const front = ellipsoid(x, y, z, 0, -20, 34, 64, 69, 75)
  return blend(back, front, 30)
}

/** Skull, cheeks and jaw: the masses of the head without eyes, nose, mouth and ears. */
export function headMass(x: number, y: number, z: number): number {
  let d = cranium(x, y, z)
  const midface = ellipsoid(x, y, z, 0, -34, -34, 55, 52, 62)
  d = blend(d, midface, 22)
  const jaw = limb(x, y, z, 42.5, -9, -65, 11.5, 12, -76, -97, 11)
  const ramus = limb(x, y, z, 44.5, -9, -65, 11, 55, 2, -22, 13)
  const lowerFace = ellipsoid(x, y, z, 0, -50, -70, 41, 41, 36)
  d = blend(d, blend(blend(jaw, ramus, 10), lowerFace, 16), 18)
  const cheekbone = limb(x, y, z, 42, -60, -25, 13, 59, -30, -17, 10)
  d = blend(d, cheekbone, 20)
  const cheek = ellipsoid(x, y, z, 36, -56, -48, 20, 22, 24)
  d = blend(d, cheek, 16)
  const chin = ellipsoid(x, y, z, 0, -83, -98, 18, 14, 13)
  d = blend(d, chin, 14)
  const brow = limb(x, y, z, 2, -85, 17, 8, 44, -62, 16.5, 7.5)
  d = blend(d, brow, 14)
  d += 1.5 * dab(x, y, z, 66, -40, 12, 28, 32, 32)
  d += 1.0 * stroke(x, y, z, 52, -50, -50, 46, -40, -74, 20)
  d -= 1.8 * dab(x, y, z, 30, -74, -22, 18, 16, 12)
  d -= 3.4 * dab(x, y, z, 60, -22, -44, 22, 30, 24)
  d -= 2.4 * dab(x, y, z, 57, -10, -46, 18, 26, 26)
  d += 1.0 * dab(x, y, z, 0, -97, -88, 17, 14, 7)
  return d
}
