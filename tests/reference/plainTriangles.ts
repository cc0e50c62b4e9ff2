/**
 * Whether a straight line between two places meets any of many triangles: a plain tree of boxes and the textbook test
 * of a ray against a triangle (Moeller and Trumbore 1997). Shares no code with what it checks.
 */

interface Node {
  readonly low: readonly number[]
  readonly high: readonly number[]
  readonly children: readonly Node[]
  readonly triangles: readonly number[]
}

type Three = readonly [number, number, number]

export class PlainTriangles {
  private readonly root: Node

  constructor(private readonly positions: Float32Array, private readonly indices: Uint32Array) {
    this.root = this.build(Array.from({ length: indices.length / 3 }, (_, t) => t))
  }

  private corner(triangle: number, k: number): Three {
    const v = 3 * this.indices[3 * triangle + k]!
    return [this.positions[v]!, this.positions[v + 1]!, this.positions[v + 2]!]
  }

  private build(triangles: number[]): Node {
    const low = [Infinity, Infinity, Infinity]
    const high = [-Infinity, -Infinity, -Infinity]
    for (const triangle of triangles) {
      for (let k = 0; k < 3; k++) {
        const corner = this.corner(triangle, k)
        for (let axis = 0; axis < 3; axis++) {
          low[axis] = Math.min(low[axis]!, corner[axis]!)
          high[axis] = Math.max(high[axis]!, corner[axis]!)
        }
      }
    }
    if (triangles.length <= 6) return { low, high, children: [], triangles }
    const sizes = high.map((value, axis) => value - low[axis]!)
    const axis = sizes.indexOf(Math.max(...sizes))
    const middles = new Map(triangles.map((t) => [t, this.corner(t, 0)[axis]! + this.corner(t, 1)[axis]! + this.corner(t, 2)[axis]!]))
    triangles.sort((a, b) => middles.get(a)! - middles.get(b)!)
    const half = triangles.length >> 1
    return { low, high, children: [this.build(triangles.slice(0, half)), this.build(triangles.slice(half))], triangles: [] }
  }

  /** Nearer than `from` metres does not count: the place may lie on a triangle. */
  blocks(place: Three, target: Three, from: number): boolean {
    const way: Three = [target[0] - place[0], target[1] - place[1], target[2] - place[2]]
    const least = from / Math.sqrt(way[0] ** 2 + way[1] ** 2 + way[2] ** 2)
    return this.meets(this.root, place, way, least)
  }

  private meets(node: Node, o: Three, d: Three, least: number): boolean {
    let enter = least
    let leave = 1
    for (let axis = 0; axis < 3; axis++) {
      const a = (node.low[axis]! - o[axis]!) / d[axis]!
      const b = (node.high[axis]! - o[axis]!) / d[axis]!
      enter = Math.max(enter, Math.min(a, b))
      leave = Math.min(leave, Math.max(a, b))
    }
    if (enter > leave) return false
    return node.children.some((child) => this.meets(child, o, d, least)) ||
      node.triangles.some((t) => this.crosses(t, o, d, least))
  }

  private crosses(triangle: number, o: Three, d: Three, least: number): boolean {
    const [a, b, c] = [this.corner(triangle, 0), this.corner(triangle, 1), this.corner(triangle, 2)]
    const minus = (p: Three, q: Three): Three => [p[0] - q[0], p[1] - q[1], p[2] - q[2]]
    const times = (p: Three, q: Three): Three => [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]]
    const inner = (p: Three, q: Three): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2]
    const [ab, ac, ao] = [minus(b, a), minus(c, a), minus(o, a)]
    const p = times(d, ac)
    const determinant = inner(ab, p)
    if (Math.abs(determinant) < 1e-14) return false
    const u = inner(ao, p) / determinant
    const q = times(ao, ab)
    const v = inner(d, q) / determinant
    const along = inner(ac, q) / determinant
    return u >= 0 && v >= 0 && u + v <= 1 && along > least && along < 1
  }
}
