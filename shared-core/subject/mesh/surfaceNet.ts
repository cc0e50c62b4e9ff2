import type { GradedGrid } from './gradedGrid.ts'

export interface QuadNet {
  /** x, y, z of each vertex, in the grid's units. */
  readonly positions: Float64Array
  /** Four vertices a quad, anticlockwise seen from outside. */
  readonly quads: Uint32Array
}

/** Cells a block has along each axis: blocks that the surface cannot reach are not sampled. */
const BLOCK = 4
/** The field may rise this much faster than distance before a block is wrongly passed over. */
const STEEPNESS = 1.5

/** Corners of a cell are numbered by bits x, y, z; its twelve edges run along x, then y, then z. */
const EDGES: readonly (readonly [number, number])[] = [
  [0, 1], [2, 3], [4, 5], [6, 7], [0, 2], [1, 3], [4, 6], [5, 7], [0, 4], [1, 5], [2, 6], [3, 7],
]
/** Each face as its corners in a ring and the edges between them. */
const FACES: readonly { readonly corners: readonly number[], readonly edges: readonly number[] }[] = [
  [0, 2, 6, 4], [1, 3, 7, 5], [0, 1, 5, 4], [2, 3, 7, 6], [0, 1, 3, 2], [4, 5, 7, 6],
].map((corners) => ({
  corners,
  edges: corners.map((a, i) => {
    const b = corners[(i + 1) % 4]!
    return EDGES.findIndex(([p, q]) => (p === a && q === b) || (p === b && q === a))
  }),
}))

/**
 * Which separate piece of surface each cut edge of a cell belongs to, for all 256 sign patterns (-1: not cut).
 * A face cut four times is always read as two separate inside corners, by both cells that share it: so two sheets
 * that meet in one cell get a vertex each and the net stays a manifold.
 */
const PIECES: readonly Int8Array[] = Array.from({ length: 256 }, (_, pattern) => {
  const inside = (corner: number): boolean => ((pattern >> corner) & 1) === 1
  const piece = new Int8Array(12).fill(-1)
  EDGES.forEach(([a, b], e) => {
    if (inside(a) !== inside(b)) piece[e] = e
  })
  const join = (a: number, b: number): void => {
    const from = piece[b]!
    const to = piece[a]!
    for (let e = 0; e < 12; e++) if (piece[e] === from) piece[e] = to
  }
  for (const face of FACES) {
    const cut = face.edges.filter((e) => piece[e] !== -1)
    if (cut.length === 2) join(cut[0]!, cut[1]!)
    if (cut.length === 4) {
      face.corners.forEach((corner, i) => {
        if (inside(corner)) join(face.edges[(i + 3) % 4]!, face.edges[i]!)
      })
    }
  }
  return piece
})

/** Samples the field at the grid's nodes, exactly near the surface and with the right sign elsewhere. */
function sample(grid: GradedGrid, field: (x: number, y: number, z: number) => number): Float32Array {
  const [nx, ny, nz] = [grid.x.length, grid.y.length, grid.z.length]
  const values = new Float32Array(nx * ny * nz).fill(NaN)
  const last = (block: number, n: number): number => Math.min(block + BLOCK, n - 1)
  const near: number[] = []
  for (let k = 0; k < nz - 1; k += BLOCK) {
    for (let j = 0; j < ny - 1; j += BLOCK) {
      for (let i = 0; i < nx - 1; i += BLOCK) {
        const [i1, j1, k1] = [last(i, nx), last(j, ny), last(k, nz)]
        const wide = Math.max(grid.widening[k]!, grid.widening[k1]!)
        const dx = ((grid.x[i1]! - grid.x[i]!) * wide + Math.abs(grid.x[i]! * (grid.widening[k]! - grid.widening[k1]!))) / 2
        const dy = (grid.y[j1]! - grid.y[j]!) / 2
        const dz = (grid.z[k1]! - grid.z[k]!) / 2
        const middle = ((grid.x[i]! + grid.x[i1]!) / 2) * ((grid.widening[k]! + grid.widening[k1]!) / 2)
        const d = field(middle, grid.y[j]! + dy, grid.z[k]! + dz)
        if (Math.abs(d) < STEEPNESS * Math.sqrt(dx * dx + dy * dy + dz * dz) + 1) near.push(i, j, k)
        else {
          for (let c = k; c <= k1; c++) for (let b = j; b <= j1; b++) for (let a = i; a <= i1; a++) {
            values[(c * ny + b) * nx + a] = d
          }
        }
      }
    }
  }
  const known = new Uint8Array(values.length)
  for (let n = 0; n < near.length; n += 3) {
    const [i, j, k] = [near[n]!, near[n + 1]!, near[n + 2]!]
    for (let c = k; c <= last(k, nz); c++) for (let b = j; b <= last(j, ny); b++) for (let a = i; a <= last(i, nx); a++) {
      const at = (c * ny + b) * nx + a
      if (known[at]) continue
      known[at] = 1
      values[at] = field(grid.x[a]! * grid.widening[c]!, grid.y[b]!, grid.z[c]!)
    }
  }
  return values
}

/**
 * Surface nets: one vertex for each piece of surface in a cell, at the middle of its cut edges; one quad for each
 * grid edge that the surface crosses. Closed if the surface does not leave the grid.
 */
export function surfaceNet(grid: GradedGrid, field: (x: number, y: number, z: number) => number): QuadNet {
  const values = sample(grid, field)
  const [nx, ny, nz] = [grid.x.length, grid.y.length, grid.z.length]
  const node = (i: number, j: number, k: number): number => (k * ny + j) * nx + i
  const positions: number[] = []
  /** First vertex of each cell that the surface crosses, with its sign pattern; others of the cell follow. */
  const vertices = new Map<number, number>()

  const patternOf = (i: number, j: number, k: number): number => {
    let pattern = 0
    for (let corner = 0; corner < 8; corner++) {
      if (values[node(i + (corner & 1), j + ((corner >> 1) & 1), k + (corner >> 2))]! < 0) pattern |= 1 << corner
    }
    return pattern
  }
  const vertexOf = (i: number, j: number, k: number, edge: number): number => {
    const piece = PIECES[patternOf(i, j, k)]!
    const key = node(i, j, k) * 12 + piece[edge]!
    const found = vertices.get(key)
    if (found !== undefined) return found
    let [sx, sy, sz, count] = [0, 0, 0, 0]
    for (let e = 0; e < 12; e++) {
      if (piece[e] !== piece[edge]) continue
      const [a, b] = EDGES[e]!
      const va = values[node(i + (a & 1), j + ((a >> 1) & 1), k + (a >> 2))]!
      const vb = values[node(i + (b & 1), j + ((b >> 1) & 1), k + (b >> 2))]!
      const t = va / (va - vb)
      const at = (corner: number): [number, number, number] => {
        const level = k + (corner >> 2)
        return [grid.x[i + (corner & 1)]! * grid.widening[level]!, grid.y[j + ((corner >> 1) & 1)]!, grid.z[level]!]
      }
      const [p, q] = [at(a), at(b)]
      sx += p[0] + (q[0] - p[0]) * t
      sy += p[1] + (q[1] - p[1]) * t
      sz += p[2] + (q[2] - p[2]) * t
      count++
    }
    const vertex = positions.length / 3
    positions.push(sx / count, sy / count, sz / count)
    vertices.set(key, vertex)
    return vertex
  }

  const quads: number[] = []
  const quad = (a: number, b: number, c: number, d: number, flip: boolean): void => {
    if (flip) quads.push(a, d, c, b)
    else quads.push(a, b, c, d)
  }
  for (let k = 1; k < nz - 1; k++) for (let j = 1; j < ny - 1; j++) for (let i = 1; i < nx - 1; i++) {
    const here = values[node(i, j, k)]! < 0
    if (here !== values[node(i + 1, j, k)]! < 0) {
      quad(vertexOf(i, j - 1, k - 1, 3), vertexOf(i, j, k - 1, 2), vertexOf(i, j, k, 0), vertexOf(i, j - 1, k, 1), !here)
    }
    if (here !== values[node(i, j + 1, k)]! < 0) {
      quad(vertexOf(i - 1, j, k - 1, 7), vertexOf(i - 1, j, k, 5), vertexOf(i, j, k, 4), vertexOf(i, j, k - 1, 6), !here)
    }
    if (here !== values[node(i, j, k + 1)]! < 0) {
      quad(vertexOf(i - 1, j - 1, k, 11), vertexOf(i, j - 1, k, 10), vertexOf(i, j, k, 8), vertexOf(i - 1, j, k, 9), !here)
    }
  }
  return { positions: Float64Array.from(positions), quads: Uint32Array.from(quads) }
}
