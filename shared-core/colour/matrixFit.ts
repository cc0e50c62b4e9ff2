import type { Matrix3 } from './matrix.ts'

/** One surface: what the camera reads and what the eye sees, both 1, 1, 1 for white. */
export interface MatrixSample {
  readonly channels: readonly [number, number, number]
  readonly xyzOverWhite: readonly [number, number, number]
}

/**
 * Least share of each channel in luminance. A free fit makes blue's share slightly negative, as most cameras' matrices
 * do; then a clipped yellow would come out brighter than white and a deep blue darker than black.
 */
const LEAST_LUMINANCE_SHARE = 0.02

/**
 * Least-squares matrix from channels to XYZ over white that keeps 1, 1, 1 in place. Misses count by the slope of
 * lightness (the cube root's), or bright surfaces alone would decide.
 */
export function fitWhitePreserving(samples: readonly MatrixSample[]): Matrix3 {
  return [fitRow(samples, 0), fitRow(samples, 1), fitRow(samples, 2)]
}

/** One row m with m · (1, 1, 1) = 1: the third share follows from the other two. */
function fitRow(samples: readonly MatrixSample[], row: 0 | 1 | 2): [number, number, number] {
  let aa = 0
  let ab = 0
  let bb = 0
  let ay = 0
  let by = 0
  for (const { channels, xyzOverWhite } of samples) {
    const seen = xyzOverWhite[row]
    const slope = 1 / Math.cbrt(seen * seen)
    const weight = slope * slope
    const a = channels[0] - channels[2]
    const b = channels[1] - channels[2]
    const y = seen - channels[2]
    aa += weight * a * a
    ab += weight * a * b
    bb += weight * b * b
    ay += weight * a * y
    by += weight * b * y
  }
  const determinant = aa * bb - ab * ab
  const red = (ay * bb - by * ab) / determinant
  const green = (by * aa - ay * ab) / determinant
  const blue = 1 - red - green
  if (row !== 1 || blue >= LEAST_LUMINANCE_SHARE) return [red, green, blue]
  // With blue's share fixed, green follows from red: least squares along that line.
  const rest = 1 - LEAST_LUMINANCE_SHARE
  const redOnLine = (ay - by - rest * (ab - bb)) / (aa - 2 * ab + bb)
  return [redOnLine, rest - redOnLine, LEAST_LUMINANCE_SHARE]
}
