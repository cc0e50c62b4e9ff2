import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Bounds } from '../view/bounds.ts'
import { placeInSet, type ViewKind } from '../view/projection.ts'
import type { FieldGrid } from './throwField.ts'

/** The plane on which throws are shown, cut at the walls: level at a height, or upright through the subject. */
export interface ThrowPlane extends FieldGrid {
  readonly bounds: Bounds
}

/** Cells over the whole plane: fine when all is at rest, coarse while a hand moves something. */
export const CELLS = { fine: 26_000, coarse: 2_400 } as const

/** @param through a point of the set in the plane; `cells` how many there may be */
export function throwPlane(view: ViewKind, bounds: Bounds, through: Vector, cells: number): ThrowPlane {
  const width = bounds.right - bounds.left
  const height = bounds.bottom - bounds.top
  const side = Math.sqrt((width * height) / cells)
  const columns = Math.max(1, Math.round(width / side))
  const rows = Math.max(1, Math.round(height / side))
  return {
    bounds,
    columns,
    rows,
    placeOf: (column, row) =>
      placeInSet(view, [bounds.left + ((column + 0.5) * width) / columns, bounds.top + ((row + 0.5) * height) / rows], through),
  }
}
