import { formatFNumber } from '../plan/entry/aperture.ts'
import { formatIso } from '../plan/entry/camera.ts'
import { formatStops } from '../plan/entry/stops.ts'
import { colourWords } from '../colour/hueWords.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { areaLabels } from '../predict/areaLabels.ts'
import type { AreaId } from '../predict/prediction.ts'
import type { Want } from './want.ts'

/** A want as a person would type it; what `parseWants` reads again, but for a wanted colour. */
export function wantWords(want: Want, plan: Plan, look: Look): string {
  switch (want.kind) {
    case 'area-level': return `${areaName(want.areaId, look)} ${formatStops(want.stops)}`
    case 'light-level': return `${look.lights[want.lightId]?.letter ?? want.lightId} ${formatStops(want.stops)}`
    case 'area-gel': {
      const level = want.stops === null ? '' : ` ${formatStops(want.stops)}`
      return `${areaName(want.areaId, look)}${level} in ${gelNames(want.gelIds, plan)}`
    }
    case 'area-colour': return `${areaName(want.areaId, look)} looks ${colourWords(want.xyz)}`
    case 'white-behind': return 'white behind'
    case 'reads-true': return `${areaName(want.areaId, look)} true`
    case 'aperture': return formatFNumber(want.fNumber)
    case 'iso': return formatIso(want.isoSpeed)
  }
}

/** "camera-right jaw": a named area or a point somebody added. */
export function areaName(areaId: AreaId, look: Look): string {
  return (areaLabels as Readonly<Record<string, string>>)[areaId] ?? look.points[areaId]?.label ?? 'lit front behind'
}

/** "Apricot + Neutral, 1 stop"; "clear" for none. */
export function gelNames(gelIds: readonly string[], plan: Plan): string {
  return gelIds.length === 0 ? 'clear' : gelIds.map((id) => plan.gels[id]?.name ?? id).join(' + ')
}
