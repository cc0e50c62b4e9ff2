import { stopsFromTimes } from '../arithmetic/portable.ts'
import type { AreaFromLight, AreaPrediction, LightPrediction, Spill } from './prediction.ts'

/** How far under the colour another light should stay (common practice, no source). */
const CLEAR_UNDER_STOPS = 3
const SECOND_COLOUR_UNDER_STOPS = 2.5
/** Far enough under to say nothing about. */
const NOT_WORTH_TELLING_STOPS = 5
/** A gel this pale dilutes like clear light, and has no colour of its own to lose. */
const PALE_GEL_STOPS = 1

/**
 * Who dilutes whom: on every area that belongs to a coloured light, how far each other light lies under it. An area
 * belongs to the light that is metered there; the background to the strongest of the lights set for it.
 */
export function spillsOf(areas: readonly AreaPrediction[], lights: readonly LightPrediction[]): Spill[] {
  const byId = new Map(lights.map((light) => [light.id, light]))
  return areas.flatMap((area) => {
    const owner = ownerOf(area, byId)
    if (!owner || !isColour(byId.get(owner.lightId)!)) return []
    return area.byLight.flatMap((given): Spill[] => {
      const diluter = byId.get(given.lightId)
      if (!diluter || given.lightId === owner.lightId || given.exposureLuxSeconds <= 0) return []
      const ownerLight = byId.get(owner.lightId)!
      // Two lights with the same sheets paint one colour together: neither dilutes the other.
      if (diluter.gel.name === ownerLight.gel.name) return []
      const stopsUnder = stopsFromTimes(owner.exposureLuxSeconds / given.exposureLuxSeconds)
      if (stopsUnder > NOT_WORTH_TELLING_STOPS) return []
      const diluterIsClear = !isColour(diluter)
      return [{
        areaId: area.id,
        areaLabel: area.label,
        ownerLightId: owner.lightId,
        diluterLightId: given.lightId,
        diluterIsClear,
        stopsUnder,
        thresholdStops: diluterIsClear ? CLEAR_UNDER_STOPS : SECOND_COLOUR_UNDER_STOPS,
      }]
    })
  })
}

function isColour(light: LightPrediction): boolean {
  return !light.gel.clear && light.gel.whiteOutStops - light.gel.strongestChannelLossStops > PALE_GEL_STOPS
}

function ownerOf(area: AreaPrediction, byId: ReadonlyMap<string, LightPrediction>): AreaFromLight | null {
  const isBackground = area.material === 'backdrop'
  const candidates = area.byLight.filter(({ lightId, exposureLuxSeconds }) => {
    const light = byId.get(lightId)
    return light?.on && exposureLuxSeconds > 0 && (light.serves === area.id || (isBackground && light.plane === 'background'))
  })
  return candidates.reduce<AreaFromLight | null>(
    (strongest, given) => (!strongest || given.exposureLuxSeconds > strongest.exposureLuxSeconds ? given : strongest), null)
}
