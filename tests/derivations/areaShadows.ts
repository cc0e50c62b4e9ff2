/**
 * Writes the own shadow of each named area, read from the subject's asset at the vertex nearest to it:
 * `npx tsx tests/derivations/areaShadows.ts > shared-core/subject/areas/areaShadows.ts`
 */
import { readFileSync } from 'node:fs'
import { subjectAreas } from '../../shared-core/subject/areas/subjectAreas.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { WORDS } from '../../shared-core/subject/asset/selfShadow.ts'

const asset = decodeSubject(readFileSync('shared-core/subject/asset/subject.bin'))

function nearestVertex([x, y, z]: readonly [number, number, number]): number {
  let nearest = 0
  let least = Infinity
  for (let v = 0; v < asset.positions.length / 3; v++) {
    const dx = asset.positions[3 * v]! - x
    const dy = asset.positions[3 * v + 1]! - y
    const dz = asset.positions[3 * v + 2]! - z
    const square = dx * dx + dy * dy + dz * dz
    if (square < least) [nearest, least] = [v, square]
  }
  return nearest
}

const rows = subjectAreas.map(({ id, place }) => {
  const vertex = nearestVertex(place)
  const words = [...asset.selfShadow.subarray(vertex * WORDS, (vertex + 1) * WORDS)]
  const hex = words.map((word) => word.toString(16).padStart(8, '0'))
  const lines = [0, 8, 16, 24].map((first) => `    '${hex.slice(first, first + 8).join('')}'`)
  return `  '${id}':\n${lines.join(' +\n')},`
})

console.log(`import type { SubjectAreaId } from './subjectAreas.ts'

/**
 * The directions in which the subject stands in its own light at each named area, as in asset/selfShadow.ts: 32 words of
 * eight hexadecimal digits. Made by tests/derivations/areaShadows.ts from the asset, so that the numbers need no mesh and
 * yet agree with the picture.
 */
export const areaShadows: Readonly<Record<SubjectAreaId, string>> = {
${rows.join('\n')}
}`)
