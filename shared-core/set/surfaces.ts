import { type Vector, scale } from '../arithmetic/vector.ts'
import { type Panel, panelsOf } from './panels.ts'
import { paperPanel, roomBox, roomPanels, sweepPanel } from './room.ts'
import type { SceneBackdrop, ScenePiece, SceneRoom } from './scene.ts'

/** A side of something in the set that returns light, with one colour. */
export interface Surface {
  /** A room surface's name, `backdrop`, or `piece:<id>:front` and `piece:<id>:back`. */
  readonly id: string
  readonly swatch: string
  /** Of a scrim: share of the light that lands on this side and leaves the other. */
  readonly transmittance: number
  /** The side of the same cloth that this light leaves from; null for all that is solid. */
  readonly otherSideId: string | null
  /** Flat parts, each facing out of this side. */
  readonly panels: readonly Panel[]
  readonly areaSquareMetres: number
  readonly isRoom: boolean
}

export const BACKDROP_ID = 'backdrop'

export function pieceSurfaceId(pieceId: string, side: 'front' | 'back'): string {
  return `piece:${pieceId}:${side}`
}

function turnedRound(panel: Panel): Panel {
  const negative = (v: Vector) => scale(v, -1)
  return { ...panel, normal: negative(panel.normal), across: negative(panel.across) }
}

function areaOf(panels: readonly Panel[]): number {
  return panels.reduce((sum, panel) => sum + 4 * panel.halfWidthMetres * panel.halfHeightMetres, 0)
}

function solid(id: string, swatch: string, panels: readonly Panel[], isRoom: boolean): Surface {
  return { id, swatch, transmittance: 0, otherSideId: null, panels, areaSquareMetres: areaOf(panels), isRoom }
}

function pieceSurfaces(piece: ScenePiece): Surface[] {
  const panels = panelsOf(piece)
  const transmittance = piece.kind === 'scrim' ? piece.transmittance : 0
  const side = (name: 'front' | 'back', other: 'front' | 'back', swatch: string, parts: readonly Panel[]): Surface => ({
    ...solid(pieceSurfaceId(piece.id, name), swatch, parts, false),
    transmittance,
    otherSideId: transmittance > 0 ? pieceSurfaceId(piece.id, other) : null,
  })
  return [side('front', 'back', piece.front, panels), side('back', 'front', piece.back, panels.map(turnedRound))]
}

/** Every side that returns light, in a fixed order: the room, the paper, then the pieces. */
export function surfacesOf(room: SceneRoom, backdrop: SceneBackdrop, pieces: readonly ScenePiece[]): readonly Surface[] {
  const walls = roomPanels(roomBox(room)).map(({ name, panel }) => solid(name, room.surfaces[name], [panel], true))
  const paper = [paperPanel(backdrop), sweepPanel(backdrop)].filter((panel) => panel !== null)
  const backdrops = paper.length > 0 ? [solid(BACKDROP_ID, backdrop.swatch, paper, false)] : []
  return [...walls, ...backdrops, ...pieces.flatMap(pieceSurfaces)]
}
