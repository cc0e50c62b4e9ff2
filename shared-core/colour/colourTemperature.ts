import { planckianSpectrum } from '../spectra/planck.ts'
import type { Xyz } from './triples.ts'
import { ucs1960Of, xyzOfLight } from './xyz.ts'

export interface CorrelatedTemperature {
  /** Temperature of the black body nearest in CIE 1960 (u, v). */
  readonly kelvin: number
  /** Distance from the locus in (u, v); positive above it (greenish), negative below (pinkish). */
  readonly duv: number
  /**
   * How far the figure can be trusted: 'sound'; 'far-from-locus' beyond |duv| 0.05, where CIE 15 does not allow a colour
   * temperature to be stated; 'beyond-search' where the nearest black body lies at an end of the search.
   */
  readonly validity: 'sound' | 'far-from-locus' | 'beyond-search'
}

/** The search runs over reciprocal megakelvin, in which steps look equal: 1000 K to 100 000 K. */
const LEAST_MIRED = 10
const MOST_MIRED = 1_000
const COARSE_STEP = 10
/** CIE 15: beyond this distance "correlated colour temperature" has no meaning. */
const FARTHEST_DUV = 0.05

const locusAt = (mired: number): { u: number; v: number } => ucs1960Of(xyzOfLight(planckianSpectrum(1e6 / mired)))

let coarseLocus: readonly { readonly mired: number; readonly u: number; readonly v: number }[] | null = null

function coarse(): NonNullable<typeof coarseLocus> {
  coarseLocus ??= Array.from({ length: (MOST_MIRED - LEAST_MIRED) / COARSE_STEP + 1 }, (_, k) => {
    const mired = LEAST_MIRED + COARSE_STEP * k
    return { mired, ...locusAt(mired) }
  })
  return coarseLocus
}

/**
 * Correlated colour temperature by search along the Planckian locus (CIE 15, CIE 1960 UCS), which unlike the fitted
 * formulae also suits heavily orange light.
 */
export function correlatedTemperature(xyz: Xyz): CorrelatedTemperature {
  const { u, v } = ucs1960Of(xyz)
  const squareTo = (point: { u: number; v: number }): number => {
    const du = point.u - u
    const dv = point.v - v
    return du * du + dv * dv
  }
  const nearest = coarse().reduce((best, point) => (squareTo(point) < squareTo(best) ? point : best))
  const mired = goldenSearch(
    (value) => squareTo(locusAt(value)),
    Math.max(nearest.mired - COARSE_STEP, LEAST_MIRED),
    Math.min(nearest.mired + COARSE_STEP, MOST_MIRED),
  )
  const onLocus = locusAt(mired)
  const distance = Math.sqrt(squareTo(onLocus))
  const atEnd = mired < LEAST_MIRED + 0.01 || mired > MOST_MIRED - 0.01
  return {
    kelvin: 1e6 / mired,
    duv: v >= onLocus.v ? distance : -distance,
    validity: atEnd ? 'beyond-search' : distance > FARTHEST_DUV ? 'far-from-locus' : 'sound',
  }
}

const GOLDEN = (Math.sqrt(5) - 1) / 2

function goldenSearch(cost: (value: number) => number, from: number, to: number): number {
  let low = from
  let high = to
  let left = high - GOLDEN * (high - low)
  let right = low + GOLDEN * (high - low)
  let leftCost = cost(left)
  let rightCost = cost(right)
  while (high - low > 1e-4) {
    if (leftCost < rightCost) {
      high = right
      right = left
      rightCost = leftCost
      left = high - GOLDEN * (high - low)
      leftCost = cost(left)
    } else {
      low = left
      left = right
      leftCost = rightCost
      right = low + GOLDEN * (high - low)
      rightCost = cost(right)
    }
  }
  return (low + high) / 2
}
