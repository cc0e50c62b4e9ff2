/** Facets in a tree of boxes, to ask whether a ray meets any of them. */
export interface BoxTree {
  /** Six numbers a box: least x, y, z, greatest x, y, z. */
  readonly boxes: Float64Array
  /** For an inner box its second child (the first follows it); for a leaf -1 - first facet. */
  readonly next: Int32Array
  readonly leafSize: Int32Array
  /** Nine numbers a facet: corner and two edges. */
  readonly facets: Float64Array
}

const LEAF = 4

/** Builds the tree by halving at the median of the longest side. */
export function boxTree(positions: Float32Array, triangles: Uint32Array): BoxTree {
  const count = triangles.length / 3
  const centre = new Float64Array(count * 3)
  for (let f = 0; f < count; f++) for (let axis = 0; axis < 3; axis++) {
    let sum = 0
    for (let c = 0; c < 3; c++) sum += positions[triangles[f * 3 + c]! * 3 + axis]!
    centre[f * 3 + axis] = sum
  }
  const boxes: number[] = []
  const next: number[] = []
  const leafSize: number[] = []
  const facets: number[] = []

  const build = (ids: Int32Array): void => {
    const box = next.length
    const [least, most] = [[Infinity, Infinity, Infinity], [-Infinity, -Infinity, -Infinity]]
    const [low, high] = [[Infinity, Infinity, Infinity], [-Infinity, -Infinity, -Infinity]]
    for (const f of ids) for (let axis = 0; axis < 3; axis++) {
      for (let c = 0; c < 3; c++) {
        const value = positions[triangles[f * 3 + c]! * 3 + axis]!
        least[axis] = Math.min(least[axis]!, value)
        most[axis] = Math.max(most[axis]!, value)
      }
      low[axis] = Math.min(low[axis]!, centre[f * 3 + axis]!)
      high[axis] = Math.max(high[axis]!, centre[f * 3 + axis]!)
    }
    boxes.push(...least, ...most)
    next.push(0)
    leafSize.push(0)
    if (ids.length <= LEAF) {
      next[box] = -1 - facets.length / 9
      leafSize[box] = ids.length
      for (const f of ids) {
        const at = (c: number, axis: number): number => positions[triangles[f * 3 + c]! * 3 + axis]!
        for (let axis = 0; axis < 3; axis++) facets.push(at(0, axis))
        for (const c of [1, 2]) for (let axis = 0; axis < 3; axis++) facets.push(at(c, axis) - at(0, axis))
      }
      return
    }
    const spans = [0, 1, 2].map((axis) => high[axis]! - low[axis]!)
    const axis = spans.indexOf(Math.max(...spans))
    ids.sort((a, b) => centre[a * 3 + axis]! - centre[b * 3 + axis]! || a - b)
    const half = ids.length >> 1
    build(ids.slice(0, half))
    next[box] = next.length
    build(ids.slice(half))
  }
  build(Int32Array.from({ length: count }, (_, f) => f))
  return {
    boxes: Float64Array.from(boxes), next: Int32Array.from(next), leafSize: Int32Array.from(leafSize),
    facets: Float64Array.from(facets),
  }
}

const stack = new Int32Array(64)

/**
 * Whether a ray from (ox, oy, oz) meets a facet further than `from`: either side counts. Intersection after Moeller
 * and Trumbore 1997, "Fast, minimum storage ray/triangle intersection".
 */
export function meets(
  tree: BoxTree, ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, from: number,
): boolean {
  const [ix, iy, iz] = [1 / dx, 1 / dy, 1 / dz]
  const { boxes, next, leafSize, facets } = tree
  let depth = 0
  stack[depth++] = 0
  while (depth > 0) {
    const box = stack[--depth]!
    const b = box * 6
    const ax = (boxes[b]! - ox) * ix
    const bx = (boxes[b + 3]! - ox) * ix
    const ay = (boxes[b + 1]! - oy) * iy
    const by = (boxes[b + 4]! - oy) * iy
    const az = (boxes[b + 2]! - oz) * iz
    const bz = (boxes[b + 5]! - oz) * iz
    const enter = Math.max(Math.min(ax, bx), Math.min(ay, by), Math.min(az, bz))
    const leave = Math.min(Math.max(ax, bx), Math.max(ay, by), Math.max(az, bz))
    if (leave < Math.max(enter, from)) continue
    const link = next[box]!
    if (link > 0) {
      stack[depth++] = link
      stack[depth++] = box + 1
      continue
    }
    for (let f = (-1 - link) * 9, end = f + leafSize[box]! * 9; f < end; f += 9) {
      const e1x = facets[f + 3]!, e1y = facets[f + 4]!, e1z = facets[f + 5]!
      const e2x = facets[f + 6]!, e2y = facets[f + 7]!, e2z = facets[f + 8]!
      const px = dy * e2z - dz * e2y, py = dz * e2x - dx * e2z, pz = dx * e2y - dy * e2x
      const determinant = e1x * px + e1y * py + e1z * pz
      if (determinant === 0) continue
      const sx = ox - facets[f]!, sy = oy - facets[f + 1]!, sz = oz - facets[f + 2]!
      const u = (sx * px + sy * py + sz * pz) / determinant
      if (u < 0 || u > 1) continue
      const qx = sy * e1z - sz * e1y, qy = sz * e1x - sx * e1z, qz = sx * e1y - sy * e1x
      const v = (dx * qx + dy * qy + dz * qz) / determinant
      if (v < 0 || u + v > 1) continue
      if ((e2x * qx + e2y * qy + e2z * qz) / determinant > from) return true
    }
  }
  return false
}
