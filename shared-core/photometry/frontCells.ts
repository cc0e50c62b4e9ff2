import { type OutlinePoint, outlineOf } from './frontOutline.ts'
import type { Front } from './modifier.ts'

/**
 * A front cut into square cells, each standing for its middle: fixed places instead of random ones, because the picture
 * must not shimmer and two devices must agree. The cells tile the front, so an edge's shadow that creeps over them one
 * after another changes the light evenly.
 */
export interface FrontCells {
  readonly count: number
  /** Middle of the part of each cell that lies on the front, as u, v pairs in metres from the front's centre. */
  readonly middles: Float64Array
  /** Share of each cell that lies on the front: less than 1 around a round edge. */
  readonly shares: Float64Array
  readonly cellWidthMetres: number
  readonly cellHeightMetres: number
}

/** About how many cells a front is cut into. */
export const CELL_COUNTS = [12, 16, 36, 81, 144, 256] as const
export type CellCount = (typeof CELL_COUNTS)[number]

/** Tests across a cell at the edge of a round front. */
const TESTS_ACROSS = 6

interface UnitCells {
  readonly middles: Float64Array
  readonly shares: Float64Array
}

/** Round shapes differ by size alone: their cells are worked out once on a front two units wide. */
const unitCells = new Map<string, UnitCells>()

export function frontCells(front: Pick<Front, 'shape' | 'widthMetres' | 'heightMetres'>, about: CellCount): FrontCells {
  const isRectangle = front.shape === 'rectangle'
  const aspect = isRectangle ? front.widthMetres / front.heightMetres : 1
  const columns = Math.min(Math.max(Math.round(Math.sqrt(about * aspect)), 1), about)
  const rows = Math.max(1, Math.round(about / columns))
  const key = `${isRectangle ? 'rectangle' : front.shape} ${columns} ${rows}`
  let unit = unitCells.get(key)
  if (!unit) {
    if (unitCells.size > 200) unitCells.clear()
    unitCells.set(key, (unit = cutUnit(outlineOf({ shape: front.shape, widthMetres: 2, heightMetres: 2 }), columns, rows)))
  }
  const middles = new Float64Array(unit.middles.length)
  for (let i = 0; i < middles.length; i += 2) {
    middles[i] = (unit.middles[i]! * front.widthMetres) / 2
    middles[i + 1] = (unit.middles[i + 1]! * front.heightMetres) / 2
  }
  return {
    count: unit.shares.length,
    middles,
    shares: unit.shares,
    cellWidthMetres: front.widthMetres / columns,
    cellHeightMetres: front.heightMetres / rows,
  }
}

function cutUnit(outline: readonly OutlinePoint[], columns: number, rows: number): UnitCells {
  const reach = Math.max(...outline.map(([u]) => u))
  const middles: number[] = []
  const shares: number[] = []
  const width = (2 * reach) / columns
  const height = (2 * reach) / rows
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      let inside = 0
      let sumU = 0
      let sumV = 0
      for (let k = 0; k < TESTS_ACROSS * TESTS_ACROSS; k++) {
        const u = -reach + width * (column + ((k % TESTS_ACROSS) + 0.5) / TESTS_ACROSS)
        const v = -reach + height * (row + (Math.floor(k / TESTS_ACROSS) + 0.5) / TESTS_ACROSS)
        if (!isInside(outline, u, v)) continue
        inside++
        sumU += u
        sumV += v
      }
      if (inside === 0) continue
      middles.push(sumU / inside, sumV / inside)
      shares.push(inside / (TESTS_ACROSS * TESTS_ACROSS))
    }
  }
  return { middles: Float64Array.from(middles), shares: Float64Array.from(shares) }
}

function isInside(outline: readonly OutlinePoint[], u: number, v: number): boolean {
  for (let i = 0; i < outline.length; i++) {
    const [au, av] = outline[i]!
    const [bu, bv] = outline[(i + 1) % outline.length]!
    if ((bu - au) * (v - av) - (bv - av) * (u - au) < 0) return false
  }
  return true
}
