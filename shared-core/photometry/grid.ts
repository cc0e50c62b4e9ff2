import { radiansFromDegrees } from '../arithmetic/portable.ts'

/** A grid in front of a modifier: what it lets through depends on the angle alone. */
export interface Grid {
  readonly kind: 'none' | 'honeycomb' | 'fabric'
  /** As printed on it; see each kind below. */
  readonly openingDegrees: number
}

/** Straight ahead some light meets the edges and walls of the cells. Common practice (0.3 stop), no source. */
const AXIAL_PASS = { none: 1, honeycomb: 0.8, fabric: 0.8 } as const
/** What the walls scatter forward at any angle. Common practice, no source. */
const LEAK = { none: 0, honeycomb: 0.005, fabric: 0.02 } as const
/** Where square cells pass half: the root of 1 - (4 s - s^2) / pi = 1/2, see `squareCells`. */
const HALF_PASS_TANGENT = 2 - Math.sqrt(4 - Math.PI / 2)

/**
 * Share of light that passes straight cells of round section, at tangent ratio `s` (1 closes): the overlap of the two
 * ends of the tube, two equal circles `s` diameters apart.
 */
function roundCells(s: number): number {
  return s >= 1 ? 0 : (2 / Math.PI) * (Math.acos(s) - s * Math.sqrt(1 - s * s))
}

/**
 * The same for square cells, averaged over the azimuth: mean of (1 - s|cos|)(1 - s|sin|). Closed along a side at s = 1,
 * along the diagonal at the square root of 2; between the two only azimuths near the diagonal pass.
 */
function squareCells(s: number): number {
  if (s >= Math.SQRT2) return 0
  if (s <= 1) return 1 - (4 / Math.PI) * s + (s * s) / Math.PI
  const edge = Math.acos(1 / s)
  const span = Math.PI / 2 - 2 * edge
  const sineEdge = Math.sqrt(1 - 1 / (s * s))
  const integral = span - 2 * s * (1 / s - sineEdge) + (s * s / 2) * (1 / (s * s) - sineEdge * sineEdge)
  return Math.max(0, integral / (Math.PI / 2))
}

/** Tangent of the angle at which the cells close (along a side, for square ones). */
function closingTangent(grid: Grid): number {
  const halfOpening = Math.tan(radiansFromDegrees(Math.min(grid.openingDegrees, 160) / 2))
  return grid.kind === 'fabric' ? halfOpening / HALF_PASS_TANGENT : halfOpening
}

/**
 * Share of the light leaving at `cosAngle` from the axis that a grid lets pass, 0-1.
 *
 * A honeycomb's printed opening is the full angle across which it passes anything. A fabric grid's is the full width at
 * half pass: one of 50 degrees closes about 55 degrees off its axis.
 */
export function gridPass(grid: Grid, cosAngle: number): number {
  if (grid.kind === 'none') return 1
  if (cosAngle <= 0) return 0
  const s = Math.sqrt(Math.max(0, 1 - cosAngle * cosAngle)) / (cosAngle * closingTangent(grid))
  const leak = LEAK[grid.kind]
  const cells = grid.kind === 'honeycomb' ? roundCells(s) : squareCells(s)
  return AXIAL_PASS[grid.kind] * (leak + (1 - leak) * cells)
}
