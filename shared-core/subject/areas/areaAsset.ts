import type { Vector } from '../../arithmetic/vector.ts'
import type { SubjectAsset } from '../asset/format.ts'
import { WORDS } from '../asset/selfShadow.ts'
import { areaPatches } from './areaPatches.ts'
import { subjectAreas } from './subjectAreas.ts'

/** Corners of each named area's facet. */
export const PATCH_CORNERS = 3

const corners = subjectAreas.flatMap(({ id }) => areaPatches[id])

/**
 * The named areas alone as a subject's asset: the three corners of each area's facet, in the order of `subjectAreas`, as
 * the whole asset has them. What lights the picture's surface lights this one.
 */
export const areaAsset: SubjectAsset = {
  positions: Float32Array.from(corners.flatMap(({ position }) => position)),
  normals: Float32Array.from(corners.flatMap(({ normal }) => normal)),
  materials: Uint8Array.from(corners, ({ material }) => material),
  triangles: Uint32Array.from(corners, (_, corner) => corner),
  selfShadow: Uint32Array.from(corners.flatMap(({ shadow }) => wordsOf(shadow))),
}

/** Part of each corner in its area's place. */
export const cornerWeights = Float64Array.from(corners, ({ weight }) => weight)

/** Place of each area on its facet, at rest, in the order of `subjectAreas`. */
export const areaPlaces: readonly Vector[] = subjectAreas.map((_, area) => {
  const sum: [number, number, number] = [0, 0, 0]
  for (let corner = PATCH_CORNERS * area; corner < PATCH_CORNERS * (area + 1); corner++) {
    for (let k = 0; k < 3; k++) sum[k]! += cornerWeights[corner]! * areaAsset.positions[3 * corner + k]!
  }
  return sum
})

function wordsOf(hexadecimal: string): number[] {
  return Array.from({ length: WORDS }, (_, i) => parseInt(hexadecimal.slice(8 * i, 8 * i + 8), 16))
}
