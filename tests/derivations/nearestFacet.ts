import type { SubjectAsset } from '../../shared-core/subject/asset/format.ts'

type Point = readonly [number, number, number]

/** The facet of the asset nearest to a place at rest: its vertices and their weights there, heaviest first. */
export function nearestFacet({ positions, triangles }: SubjectAsset, place: Point): { vertices: readonly number[], weights: readonly number[] } {
  let least = Infinity
  let nearest: { vertices: number[], weights: Point } | null = null
  for (let t = 0; t < triangles.length; t += 3) {
    const vertices = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!]
    const [a, b, c] = vertices.map((v): Point => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!]) as [Point, Point, Point]
    if (square(minus(a, place)) > 0.0025) continue
    const weights = weightsOfNearest(place, a, b, c)
    const at = [0, 1, 2].map((k) => weights[0] * a[k]! + weights[1] * b[k]! + weights[2] * c[k]!) as unknown as Point
    const distance = square(minus(at, place))
    if (distance < least) [least, nearest] = [distance, { vertices, weights }]
  }
  if (!nearest) throw new Error('There is no facet near that place.')
  const { vertices, weights } = nearest
  const order = [0, 1, 2].sort((i, j) => weights[j]! - weights[i]!)
  return { vertices: order.map((i) => vertices[i]!), weights: order.map((i) => weights[i]!) }
}

/** Barycentric weights of the point of a triangle nearest to p: inside it, else the best of its three sides. */
function weightsOfNearest(p: Point, a: Point, b: Point, c: Point): Point {
  const [ab, ac, ap] = [minus(b, a), minus(c, a), minus(p, a)]
  const [d00, d01, d11, d20, d21] = [dot(ab, ab), dot(ab, ac), dot(ac, ac), dot(ap, ab), dot(ap, ac)]
  const whole = d00 * d11 - d01 * d01
  const v = (d11 * d20 - d01 * d21) / whole
  const w = (d00 * d21 - d01 * d20) / whole
  if (v >= 0 && w >= 0 && v + w <= 1) return [1 - v - w, v, w]
  const alongAb = onSide(p, a, b)
  const alongAc = onSide(p, a, c)
  const alongBc = onSide(p, b, c)
  const sides: readonly Point[] = [[1 - alongAb, alongAb, 0], [1 - alongAc, 0, alongAc], [0, 1 - alongBc, alongBc]]
  const far = ([x, y, z]: Point): number => square(minus([0, 1, 2].map((k) => x * a[k]! + y * b[k]! + z * c[k]!) as unknown as Point, p))
  return sides.reduce((best, side) => (far(side) < far(best) ? side : best))
}

function onSide(p: Point, a: Point, b: Point): number {
  const side = minus(b, a)
  return Math.min(1, Math.max(0, dot(minus(p, a), side) / square(side)))
}

function minus(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

function square(a: Point): number {
  return dot(a, a)
}
