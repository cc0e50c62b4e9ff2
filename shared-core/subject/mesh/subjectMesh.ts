import { EYE } from '../field/eye.ts'
import { neckOpening } from '../field/cloth.ts'
import { EYE_HEIGHT, SHOULDER_LIFT, surfaceMm } from '../field/field.ts'
import { isInHairMm, materialMm } from '../field/material.ts'
import { dab, ramp } from '../field/primitives.ts'
import { eyeballMesh } from './eyeballMesh.ts'
import { gradedGrid } from './gradedGrid.ts'
import { ontoSurface } from './ontoSurface.ts'
import { surfaceNet } from './surfaceNet.ts'
import { thinOut } from './thinOut.ts'

export const meshMaterials = ['skin', 'lips', 'brow', 'hair', 'cloth', 'eye'] as const

/** The subject at rest, in metres of its own space (see field/subjectField.ts). */
export interface SubjectMesh {
  readonly positions: Float32Array
  readonly normals: Float32Array
  /** Three vertices a facet, anticlockwise seen from outside. The eyeballs are closed parts of their own. */
  readonly triangles: Uint32Array
  /** Index into `meshMaterials` of what most of the surface at the vertex is. */
  readonly materials: Uint8Array
}

function materialIndex(x: number, y: number, z: number): number {
  const m = materialMm(x, y, z)
  if (m.cloth > 0.5) return meshMaterials.indexOf('cloth')
  if (isInHairMm(x, y, z)) return meshMaterials.indexOf('hair')
  if (m.lips > 0.5) return meshMaterials.indexOf('lips')
  // A brow shines as the skin that it lies on: between vertices of two sheens a highlight would break along the facets.
  return meshMaterials.indexOf(m.lash > 0.5 ? 'brow' : 'skin')
}

const SURFACE_VERTICES = 46_000

/** How much an error of the surface shows: most at the eyes, little on cloth and at the cut below the chest. */
function importance(x: number, y: number, z: number): { shape: number, evenness: number } {
  if (z < -590) return { shape: 0.002, evenness: 1e-6 }
  if (z < -125) {
    const hem = dab(neckOpening(Math.abs(x), y, z - SHOULDER_LIFT), 0, 0, 0, 0, 0, 9, 1, 1) * (z < -150 ? 1 : 0)
    const bare = neckOpening(Math.abs(x), y, z - SHOULDER_LIFT) > 0 || z > -150
    const shape = (bare ? 0.6 : z < -330 ? 0.05 : 0.15) + 1.1 * hem
    // Narrow shadows fall above the collarbone and where an arm lies along the side.
    const hollow = dab(Math.abs(x), y, z, 62, 0, -180, 52, 60, 40)
    const armpit = dab(Math.abs(x), y, z, 158, 6, -400, 34, 90, 150)
    return { shape, evenness: bare ? 0.012 + 0.03 * hollow : (z < -330 ? 0.0001 : 0.0008) + 0.008 * armpit }
  }
  const eye = dab(Math.abs(x), y, z, EYE.x, EYE.y - 8, 0, 26, 22, 18)
  const lips = dab(Math.abs(x), y, z, 8, -104, -68, 26, 30, 16)
  const nose = dab(x, y, z, 0, -108, -38, 26, 28, 22)
  const face = ramp(-30, -70, y) * (1 - ramp(45, 65, z))
  const shape = 0.7 + 1.5 * face + 20 * eye + 4 * lips + 3 * nose
  // The nose throws its shadow on the cheek beside it.
  const besideNose = dab(Math.abs(x), y, z, 30, -82, -34, 22, 34, 32)
  return { shape, evenness: 0.004 * shape + 0.03 * besideNose }
}

/** How far a vertex may be moved onto the surface: about half the grid's gap there, in mm. */
function reach(_x: number, y: number, z: number): number {
  if (z < -130) return 1.6
  return y < -55 && z < 30 ? 0.5 : 0.9
}

/** Cuts each quad along the diagonal whose ends' normals agree best, so that edges of lids and lips stay clean. */
function cutQuads(quads: Uint32Array, normals: Float64Array): Uint32Array {
  const agree = (a: number, b: number): number =>
    normals[a * 3]! * normals[b * 3]! + normals[a * 3 + 1]! * normals[b * 3 + 1]! + normals[a * 3 + 2]! * normals[b * 3 + 2]!
  const triangles: number[] = []
  for (let q = 0; q < quads.length; q += 4) {
    const [a, b, c, d] = [quads[q]!, quads[q + 1]!, quads[q + 2]!, quads[q + 3]!]
    if (agree(a, c) >= agree(b, d)) triangles.push(a, b, c, a, c, d)
    else triangles.push(b, c, d, b, d, a)
  }
  return Uint32Array.from(triangles)
}

/** Meshes the field: some seconds of work, done once when the asset is made. */
export function subjectMesh(): SubjectMesh {
  const net = surfaceNet(gradedGrid(), surfaceMm)
  const netNormals = ontoSurface(net.positions, surfaceMm, reach, 0.25)
  const thinned = thinOut(net.positions, cutQuads(net.quads, netNormals), SURFACE_VERTICES, importance)
  const surfaceNormals = ontoSurface(thinned.positions, surfaceMm, reach, 0.25)
  const skinCount = thinned.positions.length / 3
  const triangles = Array.from(thinned.triangles)
  const positions = Array.from(thinned.positions)
  const normals = Array.from(surfaceNormals)
  for (const side of [-1, 1] as const) {
    const eye = eyeballMesh(side)
    const first = positions.length / 3
    for (const index of eye.triangles) triangles.push(first + index)
    positions.push(...eye.positions)
    normals.push(...eye.normals)
  }
  const materials = new Uint8Array(positions.length / 3)
  for (let v = 0; v < materials.length; v++) {
    materials[v] = v < skinCount
      ? materialIndex(positions[v * 3]!, positions[v * 3 + 1]!, positions[v * 3 + 2]!)
      : meshMaterials.indexOf('eye')
  }
  return {
    positions: Float32Array.from(positions, (value, i) => (i % 3 === 2 ? value + EYE_HEIGHT : value) / 1000),
    normals: Float32Array.from(normals),
    triangles: Uint32Array.from(triangles),
    materials,
  }
}
