import { cosine, sine } from '../arithmetic/portable.ts'
import type { OutlinePoint } from '../photometry/frontOutline.ts'
import type { Emitter } from '../set/emitter.ts'
import type { ShinePoints } from './shine.ts'

/**
 * Few points whose weighted sum over a front is as good as very many where nothing is in the way: what is summed is then
 * as smooth as the front is far.
 */

/** Nodes and weights of Gauss and Legendre on -1 to 1 (Abramowitz and Stegun, table 25.4). */
const FOUR = [[-0.8611363116, 0.1739274226], [-0.3399810436, 0.3260725774], [0.3399810436, 0.3260725774], [0.8611363116, 0.1739274226]] as const
const THREE = [[-0.7745966692, 0.2777777778], [0, 0.4444444444], [0.7745966692, 0.2777777778]] as const
const AROUND = 8

/**
 * Points of a rule that is exact for polynomials of degree 7 ('close', 16 points) or 5 ('wide', 9 points) over the front.
 * Rectangles take Gauss's rule each way; round fronts rings whose radii and weights match the front's own moments.
 */
export function frontRule(emitter: Emitter, order: 'close' | 'wide'): ShinePoints {
  const { front, centre, across, up, outlineOnFront, axialRadiancePerLumenSecond, areaSquareMetres } = emitter
  const rule = front.shape === 'rectangle'
    ? rectangleRule(front.widthMetres / 2, front.heightMetres / 2, order) : roundRule(outlineOnFront, order)
  const xyz = new Float64Array(3 * rule.length)
  rule.forEach(({ u, v }, k) => {
    for (let i = 0; i < 3; i++) xyz[3 * k + i] = centre[i]! + u * across[i]! + v * up[i]!
  })
  const whole = axialRadiancePerLumenSecond * areaSquareMetres
  return {
    count: rule.length, xyz,
    strength: Float64Array.from(rule, ({ weight }) => weight * whole),
    cellMetres: Math.sqrt(areaSquareMetres / rule.length),
  }
}

interface RulePoint {
  readonly u: number
  readonly v: number
  readonly weight: number
}

function rectangleRule(halfWidth: number, halfHeight: number, order: 'close' | 'wide'): RulePoint[] {
  const nodes: readonly (readonly [number, number])[] = order === 'close' ? FOUR : THREE
  return nodes.flatMap(([u, a]) => nodes.map(([v, b]) => ({ u: u * halfWidth, v: v * halfHeight, weight: a * b })))
}

function roundRule(outline: readonly OutlinePoint[], order: 'close' | 'wide'): RulePoint[] {
  const [m1, m2, m3] = [meanPower(outline, 1), meanPower(outline, 2), meanPower(outline, 3)]
  if (order === 'wide') {
    const share = (m1 * m1) / m2
    return [{ u: 0, v: 0, weight: 1 - share }, ...ring(m2 / m1, share, 0)]
  }
  // Gauss's two nodes for the square of the distance from the middle.
  const sum = (m3 - m1 * m2) / (m2 - m1 * m1)
  const root = Math.sqrt(Math.max(0, sum * sum - 4 * (sum * m1 - m2)))
  const inner = (sum - root) / 2
  const outer = (sum + root) / 2
  const innerShare = (outer - m1) / (outer - inner)
  return [...ring(inner, innerShare, 0.5), ...ring(outer, 1 - innerShare, 0)]
}

function ring(square: number, share: number, turned: number): RulePoint[] {
  const radius = Math.sqrt(square)
  return Array.from({ length: AROUND }, (_, i) => {
    const angle = (2 * Math.PI * (i + turned)) / AROUND
    return { u: radius * cosine(angle), v: radius * sine(angle), weight: share / AROUND }
  })
}

/** Mean over a polygon about its middle of the distance to the power of 2 k, triangle by triangle. */
function meanPower(outline: readonly OutlinePoint[], k: number): number {
  let sum = 0
  let area = 0
  for (let i = 0; i < outline.length; i++) {
    const [au, av] = outline[i]!
    const [bu, bv] = outline[(i + 1) % outline.length]!
    const twice = au * bv - bu * av
    area += twice
    for (const [node, weight] of FOUR) {
      const s = (node + 1) / 2
      const u = au + s * (bu - au)
      const v = av + s * (bv - av)
      let power = 1
      for (let n = 0; n < k; n++) power *= u * u + v * v
      sum += (twice * weight * power) / (k + 1)
    }
  }
  return sum / area
}
