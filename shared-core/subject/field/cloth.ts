import { blend, carve, ramp } from './primitives.ts'
import { noise } from './noise.ts'

/** How far inside the round neck opening a point is, in mm: negative where there is cloth. */
export function neckOpening(x: number, y: number, z: number): number {
  // A tilted ellipse seen from above and in front: the opening hangs lower at the breast than at the nape.
  const low = z + 204 - 0.56 * (y - 10)
  const px = x / 90
  const pz = low / 44
  return (1 - Math.sqrt(px * px + (pz < 0 ? pz * pz : 0.1 * pz * pz))) * 44
}

/** Width of the band that is sewn around the opening, in mm. */
const BAND = 13

/** How bright the cloth is beside plain: the seam of the band shows as a thin line of shade. `x` folded. */
export function clothTone(x: number, y: number, z: number): number {
  const inward = -neckOpening(x, y, z)
  const fromSeam = Math.abs(inward - BAND)
  const onBand = inward < BAND && inward > 1 ? 0.05 * noise(x * 0.8 + y * 0.3, z * 0.05) : 0
  return 1 - 0.14 * (1 - ramp(0.2, 1.6, fromSeam)) + onBand
}

/** Folds of thin jersey: slanting from the armpits across the breast, and hanging below it. Height in mm. `x` folded. */
function folds(x: number, y: number, z: number): number {
  const slanting = noise(x * 0.014 + z * 0.026 + 3, x * 0.012 - z * 0.006 + y * 0.004)
  const hanging = noise(x * 0.03 + 11, z * 0.005 + y * 0.01)
  const low = ramp(-300, -420, z)
  return 4 * slanting * (1 - 0.4 * low) + 3 * hanging * low
}

/**
 * Distance to the cloth, given the distances to the large masses of the body and to the skin beneath. At the opening it
 * lies on the skin, thin as cloth is; further down it hangs over the hollows.
 */
export function cloth(masses: number, skin: number, x: number, y: number, z: number): number {
  const inward = -neckOpening(x, y, z)
  // Thins out to nothing under the skin, or its edge would throw a ragged shadow there.
  const tight = skin + 0.5 - 1.5 * ramp(-4, 5, inward)
  const loose = blend(masses - 3.6, skin - 2, 8) - folds(x, y, z) * ramp(15, 80, inward)
  const band = 0.6 * ramp(-2, 6, inward) * (1 - ramp(BAND - 4, BAND + 8, inward))
  const hanging = tight + (loose - tight) * ramp(2, 24, inward)
  return carve(hanging - band, -6 - inward, 1.5)
}
