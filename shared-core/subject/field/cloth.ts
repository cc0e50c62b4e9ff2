import { blend, carve, ramp } from './primitives.ts'
import { noise } from './noise.ts'

/** How far inside the round neck opening a point is, in mm: negative where there is cloth. */
export function neckOpening(x: number, y: number, z: number): number {
  // A tilted ellipse seen from above and in front: the opening hangs lower at the breast than at the nape.
  const low = z + 205 - 0.62 * (y - 10)
  const px = x / 96
  const pz = low / 44
  return (1 - Math.sqrt(px * px + (pz < 0 ? pz * pz : 0))) * 44
}

/** Distance to the cloth, given the distances to the large masses of the body and to the skin beneath. */
export function cloth(masses: number, skin: number, x: number, y: number, z: number): number {
  const opening = neckOpening(x, y, z)
  const folds = 1.1 * noise(x * 0.02 + 3, z * 0.008 + y * 0.006) * ramp(10, 60, -opening)
  const hem = 1.1 * (1 - ramp(9, 15, -opening))
  return carve(blend(masses - 3.6, skin - 2, 8) - hem - folds, -opening, 3)
}
