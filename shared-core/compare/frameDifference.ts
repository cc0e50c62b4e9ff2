import { labDifference2000 } from '../colour/difference.ts'
import type { FrameColours } from './frameColours.ts'

/** Of a Frame, about what an eye takes up in a head and shoulders: nobody is asked about less. Common practice, no source. */
export const SMALLEST_PART = 0.005

/** CIEDE2000 pixel by pixel. @throws RangeError when the two are not of one size */
export function pixelDifferences(one: FrameColours, other: FrameColours): Float64Array {
  if (one.length !== other.length) throw new RangeError('Two Frames of different size cannot be compared')
  return Float64Array.from({ length: one.length / 3 }, (_, pixel) => between(one, pixel, other, pixel))
}

/**
 * CIEDE2000 of every pixel to that of nine which is most like it, the one that is less like of both ways round: an edge
 * that has moved by no more than a pixel is no difference, a catchlight that came or went is one.
 * @throws RangeError when the two are not of one size
 */
export function movedDifferences(one: FrameColours, other: FrameColours, width: number): Float64Array {
  if (one.length !== other.length) throw new RangeError('Two Frames of different size cannot be compared')
  return Float64Array.from({ length: one.length / 3 }, (_, pixel) =>
    Math.max(leastNear(one, pixel, other, width), leastNear(other, pixel, one, width)))
}

function leastNear(one: FrameColours, pixel: number, other: FrameColours, width: number): number {
  const [x, y, height] = [pixel % width, Math.floor(pixel / width), one.length / 3 / width]
  let least = between(one, pixel, other, pixel)
  for (let j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
    for (let i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1) && least > 0; i++) {
      least = Math.min(least, between(one, pixel, other, j * width + i))
    }
  }
  return least
}

function between(one: FrameColours, pixel: number, other: FrameColours, otherPixel: number): number {
  const [at, to] = [3 * pixel, 3 * otherPixel]
  if (one[at] === other[to] && one[at + 1] === other[to + 1] && one[at + 2] === other[to + 2]) return 0
  return labDifference2000(
    { l: one[at]!, a: one[at + 1]!, b: one[at + 2]! }, { l: other[to]!, a: other[to + 1]!, b: other[to + 2]! })
}

export function meanOf(differences: Float64Array): number {
  return differences.reduce((sum, difference) => sum + difference, 0) / differences.length
}

/** What this part of all pixels exceeds. @param part 0-1 */
export function exceededBy(part: number, differences: Float64Array): number {
  const rank = Math.floor((1 - part) * differences.length)
  return differences.toSorted()[Math.min(rank, differences.length - 1)]!
}
