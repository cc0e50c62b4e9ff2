import { angularProfile, profileAt } from '../../shared-core/photometry/angularProfile.ts'
import type { SeenSurface } from '../../shared-core/picture/seenSurface.ts'
import type { Emitter } from '../../shared-core/set/emitter.ts'
import { boxTree, meets, type BoxTree } from '../../shared-core/subject/asset/boxTree.ts'

/** Rays start this far out along the normal and end this far from where they start: facets are flatter than the surface. */
const CLEARANCE_METRES = 0.001

export function treeOf({ subject }: SeenSurface): BoxTree {
  return boxTree(subject.positions, subject.asset.triangles)
}

/**
 * The layer of one front as a ray tracer makes it: for each slot so many random points on the front, each asked by a ray
 * through a tree of boxes whether the subject is in the way. Points are stratified and weighed by how many
 * fell on the front: both kinder to it than pure chance.
 * @param random from 0 to 1
 */
export function tracedLayer(
  tree: BoxTree, seen: SeenSurface, slots: ArrayLike<number>, emitter: Emitter, raysASlot: number, random: () => number,
): Float64Array {
  const { centre, across, up, axis, outlineOnFront, areaSquareMetres, axialRadiancePerLumenSecond, front } = emitter
  const profile = angularProfile(front.lobeExponent, front.grid)
  const side = Math.round(Math.sqrt(raysASlot))
  const [width, height] = [front.widthMetres, front.heightMetres]
  const { positions, vertices, subject: { normals } } = seen
  const onFront = (u: number, v: number): boolean => outlineOnFront.every(([au, av], i) => {
    const [bu, bv] = outlineOnFront[(i + 1) % outlineOnFront.length]!
    return (bu - au) * (v - av) - (bv - av) * (u - au) >= 0
  })
  const isWhole = Math.abs(areaSquareMetres - width * height) < 1e-9
  return Float64Array.from(slots, (slot) => {
    const n = 3 * vertices[slot]!
    const [nx, ny, nz] = [normals[n]!, normals[n + 1]!, normals[n + 2]!]
    const [px, py, pz] = [0, 1, 2].map((k) => positions[3 * slot + k]! + CLEARANCE_METRES * normals[n + k]!) as [number, number, number]
    let sum = 0
    let onIt = 0
    for (let cell = 0; cell < side * side; cell++) {
      const u = width * (((cell % side) + random()) / side - 0.5)
      const v = height * ((Math.floor(cell / side) + random()) / side - 0.5)
      if (!isWhole && !onFront(u, v)) continue
      onIt++
      const x = centre[0] + u * across[0] + v * up[0] - px
      const y = centre[1] + u * across[1] + v * up[1] - py
      const z = centre[2] + u * across[2] + v * up[2] - pz
      const square = x * x + y * y + z * z
      const away = Math.sqrt(square)
      const cosHere = (x * nx + y * ny + z * nz) / away
      const cosThere = -(x * axis[0] + y * axis[1] + z * axis[2]) / away
      if (cosHere <= 0 || cosThere <= 0) continue
      if (meets(tree, px, py, pz, x / away, y / away, z / away, CLEARANCE_METRES)) continue
      sum += (profileAt(profile, cosThere) * cosHere * cosThere) / square
    }
    return onIt === 0 ? 0 : (sum * axialRadiancePerLumenSecond * areaSquareMetres) / onIt
  })
}
