import type { AreaId, LightPrediction } from '../predict/prediction.ts'
import type { Look } from '../plan/schema/look.ts'
import type { LookModel } from './lookModel.ts'
import type { Want } from './want.ts'

/** A want with the light it is first of all about. */
export interface Aim {
  readonly want: Want
  /** The light that serves or owns the place; null where no light is on there, or the want is about the camera. */
  readonly lightId: string | null
  /** Not said, but meant: a level that must not move when the camera is changed. */
  readonly isKept: boolean
}

/**
 * The light an area belongs to: the strongest of those metered there, on the background the strongest set for it, else
 * the strongest there; null in the dark.
 */
export function ownerOf(areaId: AreaId, look: Look, model: LookModel): string | null {
  const isBackground = areaId.startsWith('background-') || areaId.startsWith('front:')
  return model.strongestAt(areaId, (id) => look.lights[id]?.serves === areaId)
    ?? (isBackground ? model.strongestAt(areaId, (id) => look.lights[id]?.plane === 'background') : null)
    ?? model.strongestAt(areaId)
}

/** Each want with its light. */
export function aimsOf(wants: readonly Want[], look: Look, model: LookModel): readonly Aim[] {
  return wants.map((want) => ({ want, lightId: lightOfWant(want, look, model), isKept: false }))
}

function lightOfWant(want: Want, look: Look, model: LookModel): string | null {
  switch (want.kind) {
    case 'light-level': return model.lightIds.includes(want.lightId) ? want.lightId : null
    case 'area-level':
    case 'area-gel':
    case 'area-colour': return ownerOf(want.areaId, look, model)
    case 'reads-true': return model.strongestAt(want.areaId, (id) => (look.lights[id]?.gelIds.length ?? 0) > 0)
    default: return null
  }
}

/** The level every light on has now, or was agreed: what is meant to stay when ISO or aperture change. */
export function keptAims(
  lights: readonly LightPrediction[], aims: readonly Aim[], isToKeep: (lightId: string) => boolean = () => true,
): readonly Aim[] {
  const isWhiteWanted = aims.some(({ want }) => want.kind === 'white-behind')
  const spokenOf = new Set(aims.filter(({ want }) => want.kind !== 'reads-true').map(({ lightId }) => lightId))
  return lights.flatMap((light): Aim[] => {
    const isSpokenOf = spokenOf.has(light.id) || (isWhiteWanted && light.plane === 'background')
    const stops = light.wantedStops ?? light.level.stops
    if (!light.on || isSpokenOf || stops === null || !isToKeep(light.id)) return []
    return [{ want: { kind: 'light-level', lightId: light.id, stops }, lightId: light.id, isKept: true }]
  })
}
