import { blend, dab, ellipsoid, limb, stroke } from './primitives.ts'

/** Both halves of the chest run into each other over this much, or a crease would stand on the breastbone. */
const SOFT_FOLD = 16
const softly = (x: number): number => Math.sqrt(x * x + SOFT_FOLD * SOFT_FOLD)

/** Chest, shoulders and upper arms in their large masses, as cloth lies over them. `x` folded. */
export function torsoMass(x: number, y: number, z: number): number {
  const ribs = ellipsoid(x, y, z, 0, 38, -370, 152, 104, 190)
  const girdle = limb(x, y, z, 0, 25, -243, 53, 138, 17, -237, 37)
  let d = blend(ribs, girdle, 50)
  const nape = limb(x, y, z, 10, 48, -76, 14, 34, 42, -148, 17)
  const trapezius = limb(x, y, z, 34, 42, -148, 17, 84, 33, -188, 19)
  const trapeziusOuter = limb(x, y, z, 84, 33, -188, 19, 162, 24, -215, 20)
  d = blend(d, blend(blend(nape, trapezius, 10), trapeziusOuter, 12), 26)
  const deltoid = ellipsoid(x, y, z, 186, 17, -258, 41, 46, 70)
  d = blend(d, deltoid, 26)
  const arm = limb(x, y, z, 188, 18, -300, 39.5, 203, 28, -620, 35)
  d = blend(d, arm, 26)
  const breast = ellipsoid(softly(x), y, z, 74, -8, -330, 82, 52, 72)
  d = blend(d, breast, 44)
  const waist = ellipsoid(x, y, z, 0, 36, -620, 126, 100, 240)
  return blend(d, waist, 40)
}

/** Collarbones and the hollows about them, worked into the masses. `x` folded. */
export function withCollarbones(mass: number, x: number, y: number, z: number): number {
  if (z < -320 || z > -140) return mass
  const soft = Math.sqrt(x * x + 60)
  const inner = limb(soft, y, z, 14, -25, -213, 7.5, 70, -24, -206, 6)
  const outer = limb(soft, y, z, 70, -24, -206, 6, 146, 10, -200, 5)
  let d = blend(mass, blend(inner, outer, 14), 30)
  d += 2.2 * dab(x, y, z, 0, -36, -199, 14, 18, 16)
  d -= 4 * stroke(x, y, z, 0, -34, -236, 96, -30, -232, 32)
  d += 0.8 * stroke(x, y, z, 0, -50, -250, 0, -60, -300, 34)
  return d
}
