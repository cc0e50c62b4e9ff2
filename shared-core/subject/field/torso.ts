import { blend, dab, ellipsoid, limb, ramp, stroke } from './primitives.ts'

/** Both halves of the chest run into each other over this much, or a crease would stand on the breastbone. */
const SOFT_FOLD = 16
const softly = (x: number): number => Math.sqrt(x * x + SOFT_FOLD * SOFT_FOLD)

/** Chest, shoulders and upper arms in their large masses, as cloth lies over them. `x` folded. */
export function torsoMass(x: number, y: number, z: number): number {
  const ribs = ellipsoid(x, y, z, 0, 38, -388, 146, 103, 196)
  const girdle = limb(x, y, z, 0, 26, -247, 53, 146, 18, -262, 38)
  let d = blend(ribs, girdle, 60)
  const nape = limb(x, y, z, 10, 48, -76, 14, 34, 42, -150, 17)
  const trapezius = limb(x, y, z, 34, 42, -150, 17, 82, 35, -199, 20)
  const trapeziusOuter = limb(x, y, z, 82, 35, -199, 20, 166, 21, -240, 18)
  d = blend(d, blend(blend(nape, trapezius, 10), trapeziusOuter, 14), 26)
  const flank = limb(x, y, z, 118, 46, -340, 34, 104, 42, -560, 34)
  d = blend(d, flank, 40)
  const waist = ellipsoid(x, y, z, 0, 36, -620, 138, 100, 260)
  d = blend(d, waist, 60)
  const breast = ellipsoid(softly(x), y, z, 70, -6, -334, 68, 48, 70)
  d = blend(d, breast, 50)
  const deltoid = ellipsoid(x, y, z, 185, 18, -306, 42.5, 44, 88)
  const arm = blend(limb(x, y, z, 176, 19, -271, 37, 206, 22, -640, 36), deltoid, 36)
  // The shoulder runs on into the arm; lower down arm and side only touch, with a fold between them.
  return blend(d, arm, 12 + 22 * ramp(-330, -250, z))
}

/** Collarbones and the hollows about them, worked into the masses. `x` folded. */
export function withCollarbones(mass: number, x: number, y: number, z: number): number {
  if (z < -320 || z > -140) return mass
  const soft = Math.sqrt(x * x + 60)
  const inner = limb(soft, y, z, 14, -25, -213, 7.5, 72, -22, -210, 6)
  const outer = limb(soft, y, z, 72, -22, -210, 6, 148, 12, -226, 5)
  let d = blend(mass, blend(inner, outer, 14), 30)
  d += 2.2 * dab(x, y, z, 0, -36, -199, 14, 18, 16)
  d -= 4 * stroke(x, y, z, 0, -34, -236, 96, -30, -232, 32)
  d += 0.8 * stroke(x, y, z, 0, -50, -250, 0, -60, -300, 34)
  return d
}
