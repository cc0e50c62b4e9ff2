import { colourDifference2000, labOfXyz, type Lab } from '../colour/difference.ts'
import type { Xyz } from '../colour/triples.ts'
import type { AreaId, AreaPrediction, Prediction } from '../predict/prediction.ts'
import { linearFromHex, xyzFromLinear } from '../spectra/srgb.ts'

/** A colour difference that a person sees without looking for it (from memory: about 2.3 for one step in CIELAB). */
export const VISIBLE_STEP = 2.3

/** How one area looks otherwise than before. */
export interface AreaChange {
  readonly areaId: AreaId
  readonly label: string
  /** CIEDE2000 between what a display shows before and after. */
  readonly difference: number
  /** Change of the look's receptor there; null where one of both reads nothing. */
  readonly stops: number | null
  /** What a display shows before and after, "#rrggbb". */
  readonly from: string
  readonly to: string
}

/** The colour that a display shows for an area: after finish and gamut. */
export function shownXyz({ colour }: AreaPrediction): Xyz {
  return xyzFromLinear(linearFromHex(colour.display))
}

export function shownLab(area: AreaPrediction): Lab {
  return labOfXyz(shownXyz(area))
}

/** Every area that is in frame before and after, in the prediction's order. */
export function areaChanges(before: Prediction, after: Prediction): readonly AreaChange[] {
  const later = new Map(after.areas.map((area) => [area.id, area]))
  return before.areas.flatMap((area): AreaChange[] => {
    const now = later.get(area.id)
    if (!now || !area.inFrame || !now.inFrame) return []
    const stops = area.meter.stops === null || now.meter.stops === null ? null : now.meter.stops - area.meter.stops
    const difference = colourDifference2000(shownXyz(area), shownXyz(now))
    return [{ areaId: area.id, label: area.label, difference, stops, from: area.colour.display, to: now.colour.display }]
  })
}
