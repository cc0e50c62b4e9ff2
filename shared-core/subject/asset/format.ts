import type { SubjectMesh } from '../mesh/subjectMesh.ts'
import { WORDS } from './selfShadow.ts'
import { DIRECTION_COUNT, DIRECTION_SIDE, cellDirections, directionOf } from './octahedron.ts'

/** First four bytes, "HSUB", and the version of the layout: a reader of another version must refuse the file. */
export const MAGIC = 0x42555348
export const FORMAT_VERSION = 1
/** magic, version, vertices, facets, low x y z, size x y z, bytes of self-shadow: 4 bytes each. */
export const HEADER_BYTES = 44

export const NORMAL_LEVELS = 4096
export const POSITION_LEVELS = 65535

export interface SubjectAsset extends SubjectMesh {
  /** Directions in which the subject blocks itself, at rest: see selfShadow.ts. */
  readonly selfShadow: Uint32Array
}

/**
 * Two earlier neighbours of each vertex and the one opposite across them, from the facets alone: what a vertex is
 * predicted from. -1 where there is none.
 */
export interface Forecast {
  readonly near: Int32Array
  readonly beside: Int32Array
  readonly opposite: Int32Array
}

export function forecastOf(triangles: Uint32Array, vertexCount: number): Forecast {
  const near = new Int32Array(vertexCount).fill(-1)
  const beside = new Int32Array(vertexCount).fill(-1)
  const opposite = new Int32Array(vertexCount).fill(-1)
  // The facet that first names a vertex shares its first side with a facet written before it.
  for (let i = 0, next = 0; i < triangles.length; i += 3) {
    for (let c = 0; c < 3; c++) {
      const v = triangles[i + c]!
      if (v !== next) continue
      next++
      const a = triangles[i + ((c + 1) % 3)]!
      const b = triangles[i + ((c + 2) % 3)]!
      const first = Math.max(a < v ? a : -1, b < v ? b : -1)
      near[v] = first
      if (a < v && b < v) {
        beside[v] = a === first ? b : a
        // The two already stand together in an earlier facet as a rule; its third corner is the one opposite.
        opposite[v] = beside[first] === beside[v] ? near[beside[v]!]! : beside[first]!
      }
    }
  }
  return { near, beside, opposite }
}

/** Sine of the angle below the horizon at which a direction is blocked for certain, for any normal of a cell of 32 x 32. */
const SURELY_BELOW = 0.12

/**
 * For each of 32 x 32 normals the directions well below the horizon, as words. Between that and TRACED_BELOW the
 * file says what the neighbouring vertex says: no light comes from there, and so nothing is spent on it.
 */
export function horizonMasks(): Uint32Array {
  const masks = new Uint32Array(DIRECTION_COUNT * WORDS)
  const directions = cellDirections()
  for (let normal = 0; normal < DIRECTION_COUNT; normal++) {
    const [nx, ny, nz] = [directions[normal * 3]!, directions[normal * 3 + 1]!, directions[normal * 3 + 2]!]
    for (let cell = 0; cell < DIRECTION_COUNT; cell++) {
      const rise = nx * directions[cell * 3]! + ny * directions[cell * 3 + 1]! + nz * directions[cell * 3 + 2]!
      if (rise < -SURELY_BELOW) {
        const at = normal * WORDS + (cell >> 5)
        masks[at] = masks[at]! | (1 << (cell & 31))
      }
    }
  }
  return masks
}

/** Cell of a quantised normal among the 32 x 32. */
export function maskOf(u: number, v: number): number {
  const shrink = NORMAL_LEVELS / DIRECTION_SIDE
  return Math.floor(v / shrink) * DIRECTION_SIDE + Math.floor(u / shrink)
}

/** Unit normal of quantised places on the square, into `out` from `at`. */
export function normalOf(u: number, v: number, out: Float32Array, at: number): void {
  directionOf(((u + 0.5) / NORMAL_LEVELS) * 2 - 1, ((v + 0.5) / NORMAL_LEVELS) * 2 - 1, out, at)
}
