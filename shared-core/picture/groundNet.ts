import type { Receiver } from '../transport/receipt.ts'
import type { GroundSamples } from './groundSamples.ts'

/**
 * Light on paper, walls and lit fronts is smooth but for shadows: it is worked out on a net over each ground's part of
 * the Frame and drawn between. Most nodes are read off their neighbours; only where that misses is the net worked out
 * in full.
 */
export interface GroundNet {
  readonly ground: number
  readonly left: number
  readonly top: number
  /** Between nodes, in shares of the Frame. */
  readonly stepX: number
  readonly stepY: number
  readonly columns: number
  readonly rows: number
  /** By node, row by row; made when first asked for. */
  readonly receivers: (Receiver | undefined)[]
}

/** Mesh width of the coarse net, in shares of the Frame. */
const MESH_X = 1 / 10
const MESH_Y = 1 / 14
/** The fine net has this many meshes to one of the coarse. */
const FINER = 4

/** A net for each ground that is seen, by ground; null for the others. */
export function groundNets({ bounds }: GroundSamples): readonly (GroundNet | null)[] {
  return bounds.map((box, ground) => {
    if (box === null) return null
    const [left, top, right, bottom] = box as unknown as readonly [number, number, number, number]
    const columns = FINER * Math.max(1, Math.ceil((right - left) / MESH_X)) + 1
    const rows = FINER * Math.max(1, Math.ceil((bottom - top) / MESH_Y)) + 1
    return {
      ground, left, top, columns, rows,
      stepX: Math.max(1e-6, right - left) / (columns - 1),
      stepY: Math.max(1e-6, bottom - top) / (rows - 1),
      receivers: new Array<Receiver | undefined>(columns * rows),
    }
  })
}

/** The place on the ground that a node stands for. */
export function receiverAt(net: GroundNet, { finder }: GroundSamples, node: number): Receiver {
  return (net.receivers[node] ??= newReceiver(net, finder, node))
}

function newReceiver(net: GroundNet, finder: GroundSamples['finder'], node: number): Receiver {
  const i = node % net.columns
  const j = (node - i) / net.columns
  const { facing, surfaceId } = finder.grounds[net.ground]!
  return { place: finder.placeOn(net.ground, net.left + i * net.stepX, net.top + j * net.stepY), facing, surfaceId }
}

/** A value between its neighbours this near to their mean, as a share of the net's greatest, need not be worked out. */
const NEAR_ENOUGH = 0.01
/** Neighbours that differ by less than this share of the greatest have nothing between them. */
const ALIKE = 0.05

/** Values at all nodes: on the coarse net in full, between them where they would be missed. */
export function netValues(net: GroundNet, isFine: boolean, valueAt: (node: number) => number): Float32Array {
  const { columns, rows } = net
  const values = new Float32Array(columns * rows)
  let greatest = 0
  for (let j = 0; j < rows; j += FINER) {
    for (let i = 0; i < columns; i += FINER) {
      const value = valueAt(j * columns + i)
      values[j * columns + i] = value
      if (value > greatest) greatest = value
    }
  }
  /** How far each node lay from what its neighbours promised. */
  const misses = new Float32Array(columns * rows)
  for (let step = FINER / 2; step >= 1; step /= 2) {
    for (let j = 0; j < rows; j += step) {
      for (let i = 0; i < columns; i += step) {
        const isBetweenX = i % (2 * step) !== 0
        const isBetweenY = j % (2 * step) !== 0
        if (!isBetweenX && !isBetweenY) continue
        const di = isBetweenX ? step : 0
        const dj = isBetweenY ? step * columns : 0
        const at = j * columns + i
        const a = values[at - di - dj]!
        const b = values[at + di - dj]!
        const c = values[at - di + dj]!
        const d = values[at + di + dj]!
        const mean = (a + b + c + d) / 4
        values[at] = mean
        if (!isFine) continue
        const isFirst = step === FINER / 2
        const isDoubtful = isFirst ? Math.max(a, b, c, d) - Math.min(a, b, c, d) > ALIKE * greatest
          : missAround(misses, net, i, j) > NEAR_ENOUGH * greatest
        if (!isDoubtful) continue
        values[at] = valueAt(at)
        misses[at] = Math.abs(values[at]! - mean)
      }
    }
  }
  return values
}

/** The greatest miss among the nodes of the mesh before, around a node of the finest. */
function missAround(misses: Float32Array, { columns, rows }: GroundNet, i: number, j: number): number {
  let greatest = 0
  for (let y = Math.max(0, j - 2); y <= Math.min(rows - 1, j + 2); y++) {
    for (let x = Math.max(0, i - 2); x <= Math.min(columns - 1, i + 2); x++) {
      if (x % 2 !== 0 || y % 2 !== 0) continue
      if (misses[y * columns + x]! > greatest) greatest = misses[y * columns + x]!
    }
  }
  return greatest
}
