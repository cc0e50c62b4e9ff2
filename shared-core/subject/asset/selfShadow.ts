import { boxTree, meets } from './boxTree.ts'
import { DIRECTION_COUNT, cellDirections } from './octahedron.ts'

/** 32-bit words that hold one vertex's directions: bit `c & 31` of word `c >> 5` is cell c. */
export const WORDS = DIRECTION_COUNT / 32
/** A ray leaves this far above the vertex, in metres, so that it does not meet the facets it stands on. */
const LIFT = 0.0003
/** Sine of how far below the vertex's horizon directions are still traced, for shading that wraps round the edge. */
export const TRACED_BELOW = 0.03

/**
 * The directions from each vertex in which the subject itself is in the way: WORDS words a vertex. Directions
 * further below the horizon than TRACED_BELOW are not traced and count as blocked.
 */
export function selfShadow(positions: Float32Array, normals: Float32Array, triangles: Uint32Array): Uint32Array {
  const tree = boxTree(positions, triangles)
  const directions = cellDirections()
  const count = positions.length / 3
  const bits = new Uint32Array(count * WORDS)
  for (let v = 0; v < count; v++) {
    const [nx, ny, nz] = [normals[v * 3]!, normals[v * 3 + 1]!, normals[v * 3 + 2]!]
    const ox = positions[v * 3]! + nx * LIFT
    const oy = positions[v * 3 + 1]! + ny * LIFT
    const oz = positions[v * 3 + 2]! + nz * LIFT
    for (let cell = 0; cell < DIRECTION_COUNT; cell++) {
      const [dx, dy, dz] = [directions[cell * 3]!, directions[cell * 3 + 1]!, directions[cell * 3 + 2]!]
      const blocked = nx * dx + ny * dy + nz * dz < -TRACED_BELOW || meets(tree, ox, oy, oz, dx, dy, dz, 0)
      if (blocked) bits[v * WORDS + (cell >> 5)] = bits[v * WORDS + (cell >> 5)]! | (1 << (cell & 31))
    }
  }
  return bits
}

export function isBlocked(bits: Uint32Array, vertex: number, cell: number): boolean {
  return ((bits[vertex * WORDS + (cell >> 5)]! >>> (cell & 31)) & 1) === 1
}
