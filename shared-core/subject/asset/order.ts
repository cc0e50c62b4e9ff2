import type { SubjectMesh } from '../mesh/subjectMesh.ts'

/**
 * Renumbers vertices and facets so that each facet lies beside the one before and each new vertex takes the next
 * number: neighbours then differ little, which is what makes the file small.
 */
export function inWalkingOrder(mesh: SubjectMesh): SubjectMesh {
  const { triangles } = mesh
  const count = triangles.length / 3
  const vertexCount = mesh.positions.length / 3
  const across = facetsAcross(triangles, vertexCount)
  const done = new Uint8Array(count)
  const place = new Int32Array(vertexCount).fill(-1)
  const from = new Int32Array(vertexCount)
  const out = new Uint32Array(triangles.length)
  let placed = 0
  let written = 0
  const write = (facet: number, corner: number): void => {
    for (let c = 0; c < 3; c++) {
      const v = triangles[facet * 3 + ((corner + c) % 3)]!
      if (place[v] === -1) {
        from[placed] = v
        place[v] = placed++
      }
      out[written++] = place[v]!
    }
  }
  // Breadth first: new vertices appear beside rows placed not long ago.
  for (let seed = 0; seed < count; seed++) {
    if (done[seed]) continue
    const queue = [seed * 3]
    done[seed] = 1
    for (let head = 0; head < queue.length; head++) {
      const entry = queue[head]!
      write((entry / 3) | 0, entry % 3)
      const facet = (entry / 3) | 0
      for (let c = 0; c < 3; c++) {
        const other = across[facet * 3 + c]!
        const next = (other / 3) | 0
        if (other >= 0 && !done[next]) {
          done[next] = 1
          queue.push(other)
        }
      }
    }
  }
  const spread = <T extends Float32Array | Uint8Array>(values: T, each: number, fresh: T): T => {
    for (let v = 0; v < placed; v++) for (let i = 0; i < each; i++) fresh[v * each + i] = values[from[v]! * each + i]!
    return fresh
  }
  return {
    positions: spread(mesh.positions, 3, new Float32Array(placed * 3)),
    normals: spread(mesh.normals, 3, new Float32Array(placed * 3)),
    triangles: out,
    materials: spread(mesh.materials, 1, new Uint8Array(placed)),
  }
}

/** For each side of each facet (from corner c to the next) the same side of the neighbour, as facet * 3 + corner. */
function facetsAcross(triangles: Uint32Array, vertexCount: number): Int32Array {
  const waiting = new Map<number, number>()
  const across = new Int32Array(triangles.length).fill(-1)
  for (let side = 0; side < triangles.length; side++) {
    const a = triangles[side]!
    const b = triangles[side - (side % 3) + (((side % 3) + 1) % 3)]!
    const partner = waiting.get(b * vertexCount + a)
    if (partner === undefined) waiting.set(a * vertexCount + b, side)
    else {
      across[side] = partner
      across[partner] = side
    }
  }
  return across
}
