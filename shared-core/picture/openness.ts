import type { SubjectAsset } from '../subject/asset/format.ts'
import { DIRECTION_COUNT, DIRECTION_SIDE, cellDirections } from '../subject/asset/octahedron.ts'
import { WORDS } from '../subject/asset/selfShadow.ts'

/** Faces of the cube that light from all round is told by: +x, -x, +y, -y, +z, -z. */
export const FACES = 6

/**
 * How much of each face of a cube around the subject a vertex sees, past the subject itself: shares that add up to 1 for
 * a vertex in the open. Light that comes evenly from everywhere gives the vertex their sum: its openness.
 */
export interface Openness {
  /** Shares of the six faces by vertex of the asset, in its rest frame. */
  readonly faces: Float32Array
  /** The subject's own shadow by vertex, without what merely lies below the vertex's horizon: as `selfShadow`. */
  readonly raised: Uint32Array
  readonly known: Uint8Array
}

const byAsset = new WeakMap<SubjectAsset, Openness>()

/** Openness of an asset's vertices, worked out for each when it is first asked for. */
export function opennessOf(asset: SubjectAsset, vertices: Uint32Array): Openness {
  let found = byAsset.get(asset)
  if (!found) {
    const count = asset.positions.length / 3
    found = { faces: new Float32Array(FACES * count), raised: new Uint32Array(WORDS * count), known: new Uint8Array(count) }
    byAsset.set(asset, found)
  }
  for (const vertex of vertices) {
    if (found.known[vertex]) continue
    lookAround(asset, vertex, found)
    found.known[vertex] = 1
  }
  return found
}

const directions = cellDirections()
const solidAngles = cellSolidAngles()

function lookAround({ selfShadow, normals }: SubjectAsset, vertex: number, { faces, raised }: Openness): void {
  const nx = normals[3 * vertex]!
  const ny = normals[3 * vertex + 1]!
  const nz = normals[3 * vertex + 2]!
  const sums = [0, 0, 0, 0, 0, 0]
  let whole = 0
  for (let cell = 0; cell < DIRECTION_COUNT; cell++) {
    const x = directions[3 * cell]!
    const y = directions[3 * cell + 1]!
    const z = directions[3 * cell + 2]!
    const cos = nx * x + ny * y + nz * z
    if (cos <= 0) continue
    const weight = cos * solidAngles[cell]!
    whole += weight
    const word = vertex * WORDS + (cell >> 5)
    if ((selfShadow[word]! >>> (cell & 31)) & 1) {
      raised[word] = raised[word]! | (1 << (cell & 31))
      continue
    }
    const faceX = x >= 0 ? 0 : 1
    const faceY = y >= 0 ? 2 : 3
    const faceZ = z >= 0 ? 4 : 5
    sums[faceX] = sums[faceX]! + weight * x * x
    sums[faceY] = sums[faceY]! + weight * y * y
    sums[faceZ] = sums[faceZ]! + weight * z * z
  }
  // Over what the cells make of a whole hemisphere, which is pi but for their coarseness.
  for (let face = 0; face < FACES; face++) faces[FACES * vertex + face] = sums[face]! / whole
}

/** Solid angle of each cell: its part of the octahedron, seen from the middle, scaled to the whole sphere. */
function cellSolidAngles(): Float64Array {
  const angles = new Float64Array(DIRECTION_COUNT)
  let sum = 0
  for (let cell = 0; cell < DIRECTION_COUNT; cell++) {
    const u = Math.abs(((cell % DIRECTION_SIDE) + 0.5) / DIRECTION_SIDE * 2 - 1)
    const v = Math.abs((Math.floor(cell / DIRECTION_SIDE) + 0.5) / DIRECTION_SIDE * 2 - 1)
    // Both halves of the octahedron fold onto the same face but for the order of its corners.
    const z = Math.abs(1 - u - v)
    const x = u + v <= 1 ? u : 1 - v
    const y = u + v <= 1 ? v : 1 - u
    const square = x * x + y * y + z * z
    angles[cell] = 1 / (square * Math.sqrt(square))
    sum += angles[cell]!
  }
  return angles.map((angle) => (4 * Math.PI * angle) / sum)
}
