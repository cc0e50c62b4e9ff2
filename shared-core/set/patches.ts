import type { Vector } from '../arithmetic/vector.ts'
import { cornersOf } from '../photometry/polygon.ts'
import { type Panel, panelCorners } from './panels.ts'
import type { Surface } from './surfaces.ts'

/** The panel of a surface cut in a grid of patches, each taken as evenly lit. */
export interface PatchedPanel {
  readonly surfaceIndex: number
  readonly panel: Panel
  readonly corners: Float64Array
  readonly radiusMetres: number
  /** Of its patches in `Patches`; row by row from the lower left as seen along `across` and `up`. */
  readonly first: number
  readonly columns: number
  readonly rows: number
  /** Width of a patch, as far as shadows are softened by it. */
  readonly cellMetres: number
  readonly patchAreaSquareMetres: number
}

/** All patches of all surfaces, as runs of numbers. */
export interface Patches {
  readonly count: number
  readonly centres: Float64Array
  readonly panels: readonly PatchedPanel[]
  /** For a scrim's patch the one behind it on the other side; -1 elsewhere. */
  readonly otherSide: Int32Array
}

/** Walls are far and dim, pieces near and bright: patches about this wide. */
const ROOM_PATCH_METRES = 1.3
const PAPER_PATCH_METRES = 0.6
const PIECE_PATCH_METRES = 0.32

function patchWidth(surface: Surface): number {
  if (surface.isRoom) return ROOM_PATCH_METRES
  return surface.id.startsWith('piece:') ? PIECE_PATCH_METRES : PAPER_PATCH_METRES
}

function divisions(sizeMetres: number, patchMetres: number): number {
  return Math.min(8, Math.max(1, Math.round(sizeMetres / patchMetres)))
}

export function patchesOf(surfaces: readonly Surface[]): Patches {
  const panels: PatchedPanel[] = []
  let count = 0
  surfaces.forEach((surface, surfaceIndex) => {
    for (const panel of surface.panels) {
      const { halfWidthMetres: halfWidth, halfHeightMetres: halfHeight } = panel
      const columns = divisions(2 * halfWidth, patchWidth(surface))
      const rows = divisions(2 * halfHeight, patchWidth(surface))
      const patchAreaSquareMetres = (4 * halfWidth * halfHeight) / (columns * rows)
      panels.push({
        surfaceIndex,
        panel,
        corners: cornersOf(panelCorners(panel)),
        radiusMetres: Math.sqrt(halfWidth * halfWidth + halfHeight * halfHeight),
        first: count,
        columns,
        rows,
        cellMetres: Math.sqrt(patchAreaSquareMetres),
        patchAreaSquareMetres,
      })
      count += columns * rows
    }
  })
  const centres = new Float64Array(3 * count)
  for (const patched of panels) placeCentres(patched, centres)
  return { count, centres, panels, otherSide: pairSides(surfaces, panels, count) }
}

function placeCentres({ panel, first, columns, rows }: PatchedPanel, centres: Float64Array): void {
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const u = panel.halfWidthMetres * ((2 * column + 1) / columns - 1)
      const v = panel.halfHeightMetres * ((2 * row + 1) / rows - 1)
      const place = panel.centre.map((c, i) => c + u * panel.across[i]! + v * panel.up[i]!) as unknown as Vector
      centres.set(place, 3 * (first + row * columns + column))
    }
  }
}

/** The far side of a cloth is the same panel turned round: its columns run the other way. */
function pairSides(surfaces: readonly Surface[], panels: readonly PatchedPanel[], count: number): Int32Array {
  const otherSide = new Int32Array(count).fill(-1)
  for (const patched of panels) {
    const otherId = surfaces[patched.surfaceIndex]!.otherSideId
    const other = otherId === null ? undefined : panels.find(({ surfaceIndex }) => surfaces[surfaceIndex]!.id === otherId)
    if (!other) continue
    const { columns, rows, first } = patched
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        otherSide[first + row * columns + column] = other.first + row * columns + (columns - 1 - column)
      }
    }
  }
  return otherSide
}
