import { cellDirections } from '../../shared-core/subject/asset/octahedron.ts'
import type { SubjectAsset } from '../../shared-core/subject/asset/format.ts'

/** A ball in place of a head: convex, so that nothing but its own horizon hides a light from it. */
export function ballSubject(radiusMetres: number, heightMetres: number, material: number, rings = 24): SubjectAsset {
  const positions: number[] = []
  const normals: number[] = []
  const triangles: number[] = []
  const spokes = 2 * rings
  for (let ring = 0; ring <= rings; ring++) {
    const polar = (Math.PI * ring) / rings
    for (let spoke = 0; spoke < spokes; spoke++) {
      const around = (2 * Math.PI * (spoke + (ring % 2) / 2)) / spokes
      const normal = [Math.sin(polar) * Math.cos(around), Math.sin(polar) * Math.sin(around), Math.cos(polar)]
      normals.push(...normal)
      positions.push(normal[0]! * radiusMetres, normal[1]! * radiusMetres, normal[2]! * radiusMetres + heightMetres)
      if (ring === rings) continue
      const a = ring * spokes + spoke
      const b = ring * spokes + ((spoke + 1) % spokes)
      triangles.push(a, a + spokes, b, b, a + spokes, b + spokes)
    }
  }
  const count = positions.length / 3
  const selfShadow = new Uint32Array(32 * count)
  const directions = cellDirections()
  for (let v = 0; v < count; v++) {
    for (let cell = 0; cell < 1024; cell++) {
      const rise = [0, 1, 2].reduce((sum, k) => sum + normals[3 * v + k]! * directions[3 * cell + k]!, 0)
      if (rise < -0.03) selfShadow[32 * v + (cell >> 5)]! |= 1 << (cell & 31)
    }
  }
  return {
    positions: Float32Array.from(positions), normals: Float32Array.from(normals), triangles: Uint32Array.from(triangles),
    materials: new Uint8Array(count).fill(material), selfShadow,
  }
}
