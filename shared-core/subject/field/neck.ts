import { blend, dab, limb } from './primitives.ts'

/** Neck with its two long muscles, hollow and throat. `x` folded. */
export function neck(x: number, y: number, z: number): number {
  let d = limb(x, y, z, 0, 10, -50, 44, 0, 12, -130, 44.5)
  d = blend(d, limb(x, y, z, 0, 12, -130, 44.5, 0, 26, -215, 54), 20)
  d = blend(d, limb(x, y, z, 0, 28, -34, 37, 0, 22, -130, 40), 16)
  const throat = limb(x, y, z, 0, -18, -108, 25, 0, -14, -190, 23)
  d = blend(d, throat, 20)
  const muscle = limb(x, y, z, 46, 20, -58, 7.5, 14, -33, -197, 6)
  d = blend(d, muscle, 12)
  const outerHead = limb(x, y, z, 38, 10, -84, 4, 38, -26, -196, 4)
  d = blend(d, outerHead, 16)
  d -= 1.6 * dab(x, y, z, 0, -42, -143, 11, 14, 16)
  return d
}
