import { MESH_EYE } from './seenSurface.ts'
import type { IdBuffer } from './idBuffer.ts'
import type { PosedSubject } from './posedSubject.ts'

/** Points of the grid of facets along each side of a pixel. */
export const SUBDIVISION = 2

/** Kinds of pixel: where something ends inside one, it is looked at in four places. */
export const BACKGROUND = 0
export const SURFACE = 1
export const BOTH_OR_EDGE = 2

/** Two points of one pixel this far apart in depth belong to different things. */
const DEPTH_STEP_METRES = 0.012
/** Normals further apart than this within a pixel want more samples. */
const NORMAL_COSINE = 0.9

/** Tells for each pixel whether one sample is enough: `ids` has SUBDIVISION x SUBDIVISION points a pixel. */
export function pixelKinds(ids: IdBuffer, subject: PosedSubject, width: number, height: number): Uint8Array {
  const kinds = new Uint8Array(width * height)
  const { facets } = ids
  const row = width * SUBDIVISION
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = y * SUBDIVISION * row + x * SUBDIVISION
      const inside = (facets[at]! >= 0 ? 1 : 0) + (facets[at + 1]! >= 0 ? 1 : 0) + (facets[at + row]! >= 0 ? 1 : 0) + (facets[at + row + 1]! >= 0 ? 1 : 0)
      kinds[y * width + x] = inside === 0 ? BACKGROUND : inside === 4 && isEven(ids, subject, at, row) ? SURFACE : BOTH_OR_EDGE
    }
  }
  return kinds
}

function isEven({ facets, depths }: IdBuffer, { asset, normals: n }: PosedSubject, at: number, row: number): boolean {
  const { triangles, materials } = asset
  const first = facets[at]!
  const a = triangles[3 * first]!
  if (materials[a] === MESH_EYE) return false
  for (let k = 1; k < 4; k++) {
    const other = at + (k & 1) + (k >> 1) * row
    if (Math.abs(depths[at]! - depths[other]!) > DEPTH_STEP_METRES) return false
    if (facets[other] === first) continue
    const b = triangles[3 * facets[other]!]!
    if (materials[a] !== materials[b]) return false
    if (n[3 * a]! * n[3 * b]! + n[3 * a + 1]! * n[3 * b + 1]! + n[3 * a + 2]! * n[3 * b + 2]! < NORMAL_COSINE) return false
  }
  return true
}
