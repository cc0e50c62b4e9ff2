import { type LatticeSize, LATTICE_SIZES, latticeInside } from '../photometry/lattice.ts'
import type { Emitter } from './emitter.ts'

/** Fixed points of a front in the set as x, y, z triples, and the width of the patch each stands for. */
export interface EmitterPoints {
  readonly xyz: Float64Array
  readonly count: number
  readonly cellMetres: number
}

const remembered = new WeakMap<Emitter, (EmitterPoints | undefined)[]>()

/** Points of a front: made once a size, remembered with the emitter. */
export function emitterPoints(emitter: Emitter, size: LatticeSize): EmitterPoints {
  let bySize = remembered.get(emitter)
  if (!bySize) remembered.set(emitter, (bySize = []))
  const slot = LATTICE_SIZES.indexOf(size)
  return (bySize[slot] ??= placePoints(emitter, size))
}

function placePoints(emitter: Emitter, size: LatticeSize): EmitterPoints {
  const onFront = latticeInside(emitter.outlineOnFront, size)
  const count = onFront.length / 2
  const xyz = new Float64Array(3 * count)
  const { centre, across, up } = emitter
  for (let i = 0; i < count; i++) {
    const u = onFront[2 * i]!
    const v = onFront[2 * i + 1]!
    xyz[3 * i] = centre[0] + u * across[0] + v * up[0]
    xyz[3 * i + 1] = centre[1] + u * across[1] + v * up[1]
    xyz[3 * i + 2] = centre[2] + u * across[2] + v * up[2]
  }
  return { xyz, count, cellMetres: Math.sqrt(emitter.areaSquareMetres / count) }
}
