import { labDifference2000, labOfXyz } from '../colour/difference.ts'
import type { Xyz } from '../colour/triples.ts'
import { linearFromEncoded, xyzFromLinear } from '../spectra/srgb.ts'

/** What a display shows of a Frame: CIELAB, three a pixel. */
export type FrameColours = Float64Array

/** How differently two Frames look. */
export interface FrameDifference {
  /** Mean CIEDE2000 over all pixels. */
  readonly mean: number
  /** CIEDE2000 that SMALLEST_PART of the Frame exceeds: what changes in one place only is not lost in the mean. */
  readonly greatest: number
}

/** Of a Frame, about what an eye takes up in a head and shoulders: nobody is asked about less. Common practice, no source. */
export const SMALLEST_PART = 0.005

const linear = Float64Array.from({ length: 256 }, (_, code) => linearFromEncoded(code / 255))

/** @param rgba sRGB, four bytes a pixel */
export function frameColours(rgba: Uint8ClampedArray): FrameColours {
  const colours = new Float64Array((3 * rgba.length) / 4)
  for (let from = 0, to = 0; from < rgba.length; from += 4, to += 3) {
    const { l, a, b } = labOfXyz(xyzFromLinear([linear[rgba[from]!]!, linear[rgba[from + 1]!]!, linear[rgba[from + 2]!]!]) as Xyz)
    colours[to] = l
    colours[to + 1] = a
    colours[to + 2] = b
  }
  return colours
}

/** Pixel by pixel. @throws RangeError when the two are not of one size */
export function frameDifference(one: FrameColours, other: FrameColours): FrameDifference {
  if (one.length !== other.length) throw new RangeError('Two Frames of different size cannot be compared')
  const differences = new Float64Array(one.length / 3)
  let sum = 0
  for (let pixel = 0, at = 0; pixel < differences.length; pixel++, at += 3) {
    if (one[at] === other[at] && one[at + 1] === other[at + 1] && one[at + 2] === other[at + 2]) continue
    const difference = labDifference2000(
      { l: one[at]!, a: one[at + 1]!, b: one[at + 2]! }, { l: other[at]!, a: other[at + 1]!, b: other[at + 2]! })
    differences[pixel] = difference
    sum += difference
  }
  differences.sort()
  const rank = Math.floor((1 - SMALLEST_PART) * differences.length)
  return { mean: sum / differences.length, greatest: differences[Math.min(rank, differences.length - 1)]! }
}
