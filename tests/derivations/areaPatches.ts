/**
 * Writes what the subject's asset has at each named area, the facet nearest to it:
 * `npx tsx tests/derivations/areaPatches.ts > shared-core/subject/areas/areaPatches.ts`
 */
import { readFileSync } from 'node:fs'
import { nearestFacet } from './nearestFacet.ts'
import { subjectAreas } from '../../shared-core/subject/areas/subjectAreas.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { WORDS } from '../../shared-core/subject/asset/selfShadow.ts'

const asset = decodeSubject(readFileSync('shared-core/subject/asset/subject.bin'))
/** Nine digits give a 32-bit number back as it was. */
const exact = (value: number): string => String(Number(value.toPrecision(9)))

const rows = subjectAreas.map(({ id, place }) => {
  const { vertices, weights: [first, second] } = nearestFacet(asset, place)
  const steps = [first!, second!].map((weight) => Math.round(weight * 1e4))
  const weights = [...steps, 1e4 - steps[0]! - steps[1]!].map((step) => step / 1e4)
  const corners = vertices.map((v, i) => {
    const numbers = (values: Float32Array): string => [...values.subarray(3 * v, 3 * v + 3)].map(exact).join(', ')
    const hex = [...asset.selfShadow.subarray(v * WORDS, (v + 1) * WORDS)].map((word) => word.toString(16).padStart(8, '0'))
    const lines = [0, 8, 16, 24].map((first) => `        '${hex.slice(first, first + 8).join('')}'`)
    return `    {
      weight: ${weights[i]!}, position: [${numbers(asset.positions)}], normal: [${numbers(asset.normals)}],
      material: ${asset.materials[v]!},
      shadow:
${lines.join(' +\n')},
    },`
  })
  return `  '${id}': [
${corners.join('\n')}
  ],`
})

console.log(`import type { SubjectAreaId } from './subjectAreas.ts'

/** A vertex of the subject's asset, as the asset has it. */
export interface PatchCorner {
  /** Its part in the area's place on the facet; the three add up to 1. */
  readonly weight: number
  readonly position: readonly [number, number, number]
  readonly normal: readonly [number, number, number]
  /** Index into \`meshMaterials\`. */
  readonly material: number
  /** Directions in which the subject stands in its own light, as in asset/selfShadow.ts: 32 words of eight hexadecimal digits. */
  readonly shadow: string
}

/** The facet on which a named area lies; the heaviest corner first. */
export type AreaPatch = readonly [PatchCorner, PatchCorner, PatchCorner]

/**
 * What the subject's asset has at each named area. Made by tests/derivations/areaPatches.ts, so that the numbers need no
 * mesh and yet stand on the picture's own surface.
 */
export const areaPatches: Readonly<Record<SubjectAreaId, AreaPatch>> = {
${rows.join('\n')}
}`)
