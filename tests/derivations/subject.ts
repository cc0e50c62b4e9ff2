/**
 * Makes the subject's asset file: `npx tsx tests/derivations/subject.ts shared-core/subject/asset/subject.bin`.
 * Some minutes of meshing and tracing, no input: the form is the field in shared-core/subject/field.
 */
import { writeFileSync } from 'node:fs'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { subjectMesh } from '../../shared-core/subject/mesh/subjectMesh.ts'
import { encodeSubject, stepped } from '../../shared-core/subject/asset/encode.ts'
import { inWalkingOrder } from '../../shared-core/subject/asset/order.ts'
import { selfShadow } from '../../shared-core/subject/asset/selfShadow.ts'

const file = process.argv[2]
if (!file) throw new Error('Say where to write the asset.')
const began = performance.now()
const seconds = (): string => `${((performance.now() - began) / 1000).toFixed(1)} s`
const mesh = stepped(inWalkingOrder(subjectMesh()))
console.log(`${mesh.positions.length / 3} vertices, ${mesh.triangles.length / 3} facets after ${seconds()}`)
const shadow = selfShadow(mesh.positions, mesh.normals, mesh.triangles)
console.log(`own shadow traced after ${seconds()}`)
const bytes = encodeSubject(mesh, shadow)
writeFileSync(file, bytes)
console.log(`${bytes.length} bytes, gzip ${gzipSync(bytes, { level: 9 }).length}, brotli ${brotliCompressSync(bytes).length} after ${seconds()}`)
