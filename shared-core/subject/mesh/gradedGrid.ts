/**
 * A grid whose lines lie close where the face needs detail. Below the chin it widens with the body, so that the fine
 * columns of the face become the coarse columns of the chest. All in mm from the point between the eyes.
 */
import { curve, ramp } from '../field/primitives.ts'

export interface GradedGrid {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly z: Float64Array
  /** How much wider than at the head the columns stand, for each level of z. */
  readonly widening: Float64Array
}

/** Lines from `from` to `to` whose gaps follow `gapAt`. */
function lines(from: number, to: number, gapAt: (place: number) => number): number[] {
  const out = [from]
  let place = from
  while (place < to) {
    place += gapAt(place + gapAt(place) / 2)
    out.push(place)
  }
  return out
}

const acrossGap = curve([[0, 1.3], [12, 1.25], [18, 0.9], [46, 0.95], [54, 1.6], [80, 2.2], [100, 2.8]])
const depthGap = curve([[-140, 1.3], [-66, 1.2], [-50, 2.2], [-14, 2.4], [-4, 1.5], [36, 1.7], [50, 3], [180, 6]])
const heightGap = curve([
  [-640, 14], [-420, 10], [-270, 5], [-240, 3], [-190, 2.8], [-130, 2.6], [-108, 1.4], [-84, 1.2], [-62, 0.95],
  [-50, 1.05], [-12, 1.1], [-8, 0.72], [8, 0.72], [12, 1.1], [28, 1.6], [60, 2], [150, 2.6],
])

export function gradedGrid(): GradedGrid {
  const half = lines(0, 108, acrossGap)
  const x = Float64Array.from([...half.slice(1).map((v) => -v).reverse(), ...half])
  const y = Float64Array.from(lines(-136, 176, depthGap))
  const z = Float64Array.from(lines(-634, 146, heightGap))
  return { x, y, z, widening: z.map((level) => 1 + 1.5 * (1 - ramp(-215, -112, level))) }
}
