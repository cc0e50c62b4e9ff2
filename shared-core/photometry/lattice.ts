import type { OutlinePoint } from './frontOutline.ts'

/**
 * Fixed points on a front, instead of random ones: the picture must not shimmer and two devices must agree.
 *
 * A Fibonacci lattice (Zaremba 1966; Niederreiter 1992): its projections on both sides of the front are evenly spaced, so
 * a flag's straight edge crosses the points one by one, and its error falls almost as 1/N.
 */
export const LATTICE_SIZES = [13, 34, 89, 233] as const
export type LatticeSize = (typeof LATTICE_SIZES)[number]
const GENERATOR: Record<LatticeSize, number> = { 13: 8, 34: 21, 89: 55, 233: 144 }

function latticeOf(size: LatticeSize): Float64Array {
  const points = new Float64Array(2 * size)
  for (let i = 0; i < size; i++) {
    points[2 * i] = (i + 0.5) / size
    points[2 * i + 1] = (((i * GENERATOR[size]) % size) + 0.5) / size
  }
  return points
}

const UNIT: Record<LatticeSize, Float64Array> = {
  13: latticeOf(13), 34: latticeOf(34), 89: latticeOf(89), 233: latticeOf(233),
}

/** Points of the lattice in the unit square as x, y pairs. */
export function unitLattice(size: LatticeSize): Float64Array {
  return UNIT[size]
}

function isInside(outline: readonly OutlinePoint[], u: number, v: number): boolean {
  for (let i = 0; i < outline.length; i++) {
    const [au, av] = outline[i]!
    const [bu, bv] = outline[(i + 1) % outline.length]!
    if ((bu - au) * (v - av) - (bv - av) * (u - au) < 0) return false
  }
  return true
}

/**
 * Lattice points inside a convex, anticlockwise outline, as u, v pairs: the lattice is laid over its bounding rectangle,
 * so a round front keeps about four fifths of `size`.
 */
export function latticeInside(outline: readonly OutlinePoint[], size: LatticeSize): Float64Array {
  let left = Infinity
  let right = -Infinity
  let bottom = Infinity
  let top = -Infinity
  for (const [u, v] of outline) {
    left = Math.min(left, u)
    right = Math.max(right, u)
    bottom = Math.min(bottom, v)
    top = Math.max(top, v)
  }
  const unit = UNIT[size]
  const kept: number[] = []
  for (let i = 0; i < size; i++) {
    const u = left + (right - left) * unit[2 * i]!
    const v = bottom + (top - bottom) * unit[2 * i + 1]!
    if (isInside(outline, u, v)) kept.push(u, v)
  }
  return Float64Array.from(kept)
}
