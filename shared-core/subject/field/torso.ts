import { blend, dab, ellipsoid, limb, stroke } from './primitives.ts'

/** Chest, shoulders and upper arms in their large masses, as cloth lies over them. `x` folded. */
export function torsoMass(x: number, y: number, z: number): number {
  const ribs = ellipsoid(x, y, z, 0, 38, -370, 152, 104, 190)
  const girdle = limb(x, y, z, 0, 25, -243, 53, 138, 17, -237, 37)
  let d = blend(ribs, girdle, 50)
  const nape = limb(x, y, z, 10, 48, -76, 14, 34, 42, -148, 17)
  const trapezius = limb(x, y, z, 34, 42, -148, 17, 84, 33, -188, 19)
  const trapeziusOuter = limb(x, y, z, 84, 33, -188, 19, 162, 24, -215, 20)
  d = blend(d, blend(blend(nape, trapezius, 10), trapeziusOuter, 12), 26)
  const deltoid = ellipsoid(x, y, z, 184, 17, -256, 42, 46, 60)
  d = blend(d, deltoid, 26)
  const arm = limb(x, y, z, 190, 18, -280, 41, 204, 28, -620, 35)
  d = blend(d, arm, 14)
  const breast = ellipsoid(x, y, z, 72, -8, -330, 82, 52, 72)
  d = blend(d, breast, 40)
  const waist = ellipsoid(x, y, z, 0, 36, -620, 126, 100, 240)
  return blend(d, waist, 40)
}

/** Collarbones and the hollows about them, worked into the masses. `x` folded. */
export function withCollarbones(mass: number, x: number, y: number, z: number): number {
  if (z < -320 || z > -140) return mass
  const inner = limb(x, y, z, 14, -23, -206, 8, 76, -23, -207, 7.5)
  const outer = limb(x, y, z, 76, -23, -207, 7.5, 156, 4, -205, 7)
  let d = blend(mass, blend(inner, outer, 14), 24)
  d += 2 * dab(x, y, z, 70, -8, -188, 40, 26, 20)
  d += 2.2 * dab(x, y, z, 0, -36, -199, 14, 18, 16)
  d += 1.6 * stroke(x, y, z, 60, -40, -220, 130, -26, -222, 22)
  d += 1.2 * stroke(x, y, z, 0, -50, -250, 0, -60, -300, 30)
  return d
}
