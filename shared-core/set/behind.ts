import { type Vector, add, dot, scale, subtract } from '../arithmetic/vector.ts'
import { builtSet } from './builtSet.ts'
import { sightThrough } from './camera.ts'
import type { Emitter } from './emitter.ts'
import type { Panel } from './panels.ts'
import type { Scene } from './scene.ts'
import { BACKDROP_ID } from './surfaces.ts'

/** What a line of sight through the Frame meets, the subject left out. */
export interface Behind {
  readonly kind: 'paper' | 'wall' | 'piece' | 'front'
  /** The surface met, for all but a lit front. */
  readonly surfaceId: string | null
  /** The light whose front is met; null for all else. */
  readonly lightId: string | null
  readonly place: Vector
  /** Out of the surface, towards the camera. */
  readonly facing: Vector
  readonly distanceMetres: number
}

export const backgroundAreaIds = [
  'background-centre', 'background-top-left', 'background-top-right', 'background-bottom-left', 'background-bottom-right',
] as const
export type BackgroundAreaId = (typeof backgroundAreaIds)[number]

/** Corners are judged a little inside the edge of the Frame, where a patch of paper can be metered. */
const CORNER_INSET = 0.06

const FRAME_PLACES: Record<BackgroundAreaId, readonly [frameX: number, frameY: number]> = {
  'background-centre': [0.5, 0.5],
  'background-top-left': [CORNER_INSET, CORNER_INSET],
  'background-top-right': [1 - CORNER_INSET, CORNER_INSET],
  'background-bottom-left': [CORNER_INSET, 1 - CORNER_INSET],
  'background-bottom-right': [1 - CORNER_INSET, 1 - CORNER_INSET],
}

export interface BackgroundArea {
  readonly id: BackgroundAreaId
  readonly frameX: number
  readonly frameY: number
  readonly behind: Behind
}

/** Distance along a unit line of sight to a panel, or Infinity. */
function distanceToPanel(from: Vector, sight: Vector, panel: Panel): number {
  const slope = dot(sight, panel.normal)
  if (Math.abs(slope) < 1e-12) return Infinity
  const distance = dot(subtract(panel.centre, from), panel.normal) / slope
  if (distance <= 1e-6) return Infinity
  const at = subtract(add(from, scale(sight, distance)), panel.centre)
  const inside = Math.abs(dot(at, panel.across)) <= panel.halfWidthMetres + 1e-9 &&
    Math.abs(dot(at, panel.up)) <= panel.halfHeightMetres + 1e-9
  return inside ? distance : Infinity
}

/** Distance along a line of sight to a lit front, or Infinity. */
function distanceToFront(from: Vector, sight: Vector, emitter: Emitter): number {
  const slope = dot(sight, emitter.axis)
  if (Math.abs(slope) < 1e-12) return Infinity
  const distance = dot(subtract(emitter.centre, from), emitter.axis) / slope
  if (distance <= 1e-6) return Infinity
  const at = subtract(add(from, scale(sight, distance)), emitter.centre)
  const u = dot(at, emitter.across)
  const v = dot(at, emitter.up)
  const outline = emitter.outlineOnFront
  for (let i = 0; i < outline.length; i++) {
    const [au, av] = outline[i]!
    const [bu, bv] = outline[(i + 1) % outline.length]!
    if ((bu - au) * (v - av) - (bv - av) * (u - au) < 0) return Infinity
  }
  return distance
}

/**
 * What lies behind the subject at a position of the Frame (0-1 from the left and the top): the nearest of paper, pieces,
 * lit fronts and walls. Outside the room it is the wall that the line of sight leaves through.
 */
export function behindAt(scene: Scene, frameX: number, frameY: number): Behind {
  const set = builtSet(scene)
  const from = set.view.place
  const sight = sightThrough(set.view, frameX, frameY)
  let nearest = Infinity
  let met: Omit<Behind, 'place' | 'distanceMetres'> | null = null
  for (const surface of set.surfaces) {
    for (const panel of surface.panels) {
      if (dot(sight, panel.normal) > 0) continue
      const distance = distanceToPanel(from, sight, panel)
      if (distance >= nearest) continue
      nearest = distance
      const kind = surface.isRoom ? 'wall' : surface.id === BACKDROP_ID ? 'paper' : 'piece'
      met = { kind, surfaceId: surface.id, lightId: null, facing: panel.normal }
    }
  }
  for (const [lightId, { emitters }] of set.lights) {
    for (const emitter of emitters) {
      if (dot(sight, emitter.axis) > 0) continue
      const distance = distanceToFront(from, sight, emitter)
      if (distance >= nearest) continue
      nearest = distance
      met = { kind: 'front', surfaceId: null, lightId, facing: emitter.axis }
    }
  }
  // A camera outside the walls may see none of their inner sides: the void behind is taken as the rear wall's colour.
  if (met === null) {
    nearest = Math.max(0.01, (set.box.rear - from[1]) / Math.max(sight[1], 0.01))
    met = { kind: 'wall', surfaceId: 'rearWall', lightId: null, facing: [0, -1, 0] }
  }
  return { ...met, place: add(from, scale(sight, nearest)), distanceMetres: nearest }
}

/** The five places of the background that are always judged: the Frame's centre and corners. */
export function backgroundAreas(scene: Scene): readonly BackgroundArea[] {
  return backgroundAreaIds.map((id) => {
    const [frameX, frameY] = FRAME_PLACES[id]
    return { id, frameX, frameY, behind: behindAt(scene, frameX, frameY) }
  })
}
