import type { AreaPrediction, Prediction } from '../../shared-core/predict/prediction.ts'

/** The level at which what lies behind reads white in every channel, under one gel or clear. */
export interface WhiteLine {
  /** "clear", or the gel's name. */
  readonly name: string
  readonly clear: boolean
  /** Metered at the background, relative to the taking aperture. */
  readonly stops: number
  /** The gel on white, `#rrggbb`; null for clear. */
  readonly gelHex: string | null
}

/**
 * The white lines of a look: one for clear light and one for each gel that is lit, lowest first.
 *
 * A gel's line lies `whiteOut - meterLoss` over the clear one: it must be pushed `whiteOut` stops past clear's clip, and
 * of those the meter sees all but what the sheet takes from the meter. Empty when nothing reaches the background's
 * centre, since then nothing says how much light it takes there.
 */
export function whiteLines(prediction: Prediction): readonly WhiteLine[] {
  const clearStops = clearWhiteStops(prediction)
  if (clearStops === null) return []
  const lines = new Map<string, WhiteLine>()
  lines.set('clear', { name: 'clear', clear: true, stops: clearStops, gelHex: null })
  for (const { on, gel } of prediction.lights) {
    if (!on || gel.clear || lines.has(gel.name)) continue
    lines.set(gel.name, {
      name: gel.name,
      clear: false,
      stops: clearStops + gel.whiteOutStops - gel.meterLossStops,
      gelHex: gel.onWhite,
    })
  }
  return [...lines.values()].sort((a, b) => a.stops - b.stops)
}

/**
 * The metered level at which clear light turns the background's centre white. Read off the light that gives most there:
 * its weakest channel lies so far under clip, so its own white lies that far over its reading, and the clear one lower
 * by the gel's part of it.
 */
function clearWhiteStops(prediction: Prediction): number | null {
  const centre = prediction.areas.find((area) => area.id === 'background-centre')
  const strongest = centre && strongestLightAt(centre)
  if (!strongest || strongest.stops === null) return null
  const weakest = Math.min(...strongest.channels)
  const gel = prediction.lights.find((light) => light.id === strongest.lightId)?.gel
  if (!(weakest > 0) || !gel) return null
  const ownWhiteStops = strongest.stops - Math.log2(weakest)
  return gel.clear ? ownWhiteStops : ownWhiteStops - (gel.whiteOutStops - gel.meterLossStops)
}

function strongestLightAt(area: AreaPrediction) {
  return area.byLight.reduce<AreaPrediction['byLight'][number] | null>(
    (best, from) => (from.exposureLuxSeconds > (best?.exposureLuxSeconds ?? 0) ? from : best),
    null,
  )
}
