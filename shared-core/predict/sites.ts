import { direction, dot, subtract, type Vector } from '../arithmetic/vector.ts'
import type { Look, NamedArea, Point } from '../plan/schema/look.ts'
import { backgroundAreas, behindAt, type Behind } from '../set/behind.ts'
import { builtSet } from '../set/builtSet.ts'
import { framePositionOf, isInFrame, type CameraView } from '../set/camera.ts'
import { vectorOf } from '../set/emitter.ts'
import { facingOf } from '../set/panels.ts'
import type { Scene } from '../set/scene.ts'
import { pieceSurfaceId } from '../set/surfaces.ts'
import type { Receiver } from '../transport/receipt.ts'
import { areaLabels } from './areaLabels.ts'
import type { AreaId, AreaMaterial } from './prediction.ts'

/** Rounded places show a little of themselves past their own edge: the top of the hair, a shoulder. */
export const TURNED_AWAY_COSINE = -0.2

/** A place that is metered and coloured: where it is, what it is of, and what the camera sees there. */
export interface Site {
  readonly id: AreaId
  readonly label: string
  readonly material: AreaMaterial
  readonly receiver: Receiver
  /** Set for what may shine by itself towards the camera: a lit front or a scrim. */
  readonly shines: Behind | null
  /** The swatch of what is lit there; null for the subject, whose materials are its own, and for a bare lit front. */
  readonly swatch: string | null
  /** Share of its light that what is lit there lets through; 0 for all but a scrim. */
  readonly transmittance: number
  readonly inFrame: boolean
  readonly frameX: number
  readonly frameY: number
}

/** All places of a look in the prediction's order: subject, background, added points, lit fronts. */
export function sitesOf(scene: Scene, points: Look['points']): readonly Site[] {
  const set = builtSet(scene)
  const { view } = set
  const subject = set.form.areas.map((area): Site => ({
    id: area.id,
    label: areaLabels[area.id],
    material: area.material,
    receiver: { place: area.place, facing: area.facing, surfaceId: null, ownShadow: area.ownShadow },
    shines: null,
    swatch: null,
    transmittance: 0,
    ...seen(view, area.place, area.facing),
  }))
  const background = backgroundAreas(scene).map(({ id, frameX, frameY, behind }): Site => ({
    ...behindSite(scene, id, areaLabels[id as NamedArea], behind),
    inFrame: true,
    frameX,
    frameY,
  }))
  const added = Object.entries(points).map(([id, point]) => pointSite(view, id, point))
  return [...subject, ...background, ...added, ...frontSites(scene)]
}

function behindSite(scene: Scene, id: AreaId, label: string, behind: Behind): Omit<Site, 'inFrame' | 'frameX' | 'frameY'> {
  const surface = builtSet(scene).surfaces.find((found) => found.id === behind.surfaceId)
  const transmittance = surface?.transmittance ?? 0
  const shines = behind.kind === 'front' || transmittance > 0
  return {
    id,
    label,
    material: shines ? 'front' : 'backdrop',
    receiver: { place: behind.place, facing: behind.facing, surfaceId: behind.surfaceId },
    shines: shines ? behind : null,
    swatch: surface?.swatch ?? null,
    transmittance,
  }
}

function pointSite(view: CameraView, id: string, point: Point): Site {
  const place = vectorOf(point.place)
  const facing = facingOf(point.facingDegrees, point.tiltDegrees)
  return {
    id,
    label: point.label,
    material: 'point',
    receiver: { place, facing, surfaceId: null },
    shines: null,
    swatch: point.swatch,
    transmittance: 0,
    ...seen(view, place, facing),
  }
}

/** The middle of each scrim and each light's front that faces the camera inside the frame: a lit box behind is metered there. */
function frontSites(scene: Scene): Site[] {
  const { view } = builtSet(scene)
  const fronts = scene.lights.map((light) =>
    ({ id: `front:${light.id}`, place: vectorOf(light.place), lightId: light.id, surfaceIds: [] as string[] }))
  const scrims = scene.pieces.filter((piece) => piece.transmittance > 0).map((piece) => ({
    id: `front:${piece.id}`,
    place: vectorOf(piece.place),
    lightId: null,
    surfaceIds: [pieceSurfaceId(piece.id, 'front'), pieceSurfaceId(piece.id, 'back')],
  }))
  return [...fronts, ...scrims].flatMap(({ id, place, lightId, surfaceIds }) => {
    const position = framePositionOf(view, place)
    if (!isInFrame(position)) return []
    const behind = behindAt(scene, position.frameX, position.frameY)
    const isMet = lightId !== null ? behind.lightId === lightId : surfaceIds.includes(behind.surfaceId ?? '')
    if (!isMet) return []
    const { frameX, frameY } = position
    return [{ ...behindSite(scene, id, 'lit front behind', behind), inFrame: true, frameX, frameY }]
  })
}

function seen(view: CameraView, place: Vector, facing: Vector): Pick<Site, 'inFrame' | 'frameX' | 'frameY'> {
  const position = framePositionOf(view, place)
  const faces = dot(facing, direction(subtract(view.place, place))) > TURNED_AWAY_COSINE
  return { inFrame: faces && isInFrame(position), frameX: position.frameX, frameY: position.frameY }
}
