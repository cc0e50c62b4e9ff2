import { CELL_COUNTS, type CellCount, frontCells } from '../photometry/frontCells.ts'
import type { Emitter } from './emitter.ts'

/** Cells of a front in the set: their middles as x, y, z triples, each with its weight. */
export interface EmitterPoints {
  readonly count: number
  readonly xyz: Float64Array
  readonly shares: Float64Array
  readonly cellWidthMetres: number
  readonly cellHeightMetres: number
}

const remembered = new WeakMap<Emitter, (EmitterPoints | undefined)[]>()

/** Cells of a front: made once a size, remembered with the emitter. */
export function emitterPoints(emitter: Emitter, about: CellCount): EmitterPoints {
  let bySize = remembered.get(emitter)
  if (!bySize) remembered.set(emitter, (bySize = []))
  return (bySize[CELL_COUNTS.indexOf(about)] ??= placePoints(emitter, about))
}

function placePoints(emitter: Emitter, about: CellCount): EmitterPoints {
  const { count, middles, shares, cellWidthMetres, cellHeightMetres } = frontCells(emitter.front, about)
  const xyz = new Float64Array(3 * count)
  const { centre, across, up } = emitter
  for (let i = 0; i < count; i++) {
    const u = middles[2 * i]!
    const v = middles[2 * i + 1]!
    xyz[3 * i] = centre[0] + u * across[0] + v * up[0]
    xyz[3 * i + 1] = centre[1] + u * across[1] + v * up[1]
    xyz[3 * i + 2] = centre[2] + u * across[2] + v * up[2]
  }
  return { count, xyz, shares, cellWidthMetres, cellHeightMetres }
}
