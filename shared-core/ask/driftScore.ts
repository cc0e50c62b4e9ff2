import { labDifference2000, labOfXyz } from '../colour/difference.ts'
import type { AreaId, AreaPrediction, Prediction } from '../predict/prediction.ts'
import { VISIBLE_STEP } from './visibleChange.ts'

/** What a photographer would correct (common practice, no source). */
const LEVEL_STEP_STOPS = 1 / 3
/** So far under mid-grey a print is black: what happens there shows to nobody (common practice, no source). */
const DEEP_SHADOW_STOPS = -4.5

/** The area that shows a drift first, and how far: 1 is just seen. */
export interface FirstToGo {
  readonly score: number
  readonly areaId: AreaId | null
  readonly label: string
  readonly by: 'level' | 'colour'
}

/** The most that any area in frame shows of the difference between two predictions. */
export function driftScore(before: Prediction, after: Prediction): FirstToGo {
  const later = new Map(after.areas.map((area) => [area.id, area]))
  let first: FirstToGo = { score: 0, areaId: null, label: '', by: 'level' }
  for (const area of before.areas) {
    const now = later.get(area.id)
    if (!now || !area.inFrame || !now.inFrame || (isDeep(area) && isDeep(now)) || (isWhite(area) && isWhite(now))) continue
    const level = area.meter.stops === null || now.meter.stops === null ? 0 : Math.abs(now.meter.stops - area.meter.stops) / LEVEL_STEP_STOPS
    const colour = colourStep(area, now) / VISIBLE_STEP
    const score = Math.max(level, colour)
    if (score > first.score) first = { score, areaId: area.id, label: area.label, by: level >= colour ? 'level' : 'colour' }
  }
  return first
}

function isDeep({ colour }: AreaPrediction): boolean {
  return colour.spotStopsOverGrey === null || colour.spotStopsOverGrey < DEEP_SHADOW_STOPS
}

/** Past clip in every channel: whatever it gains there, the file holds white. */
function isWhite({ colour }: AreaPrediction): boolean {
  return colour.clipped.every((clipped) => clipped)
}

/** CIEDE2000 at the lightness of before: brighter and darker are counted in stops. */
function colourStep(before: AreaPrediction, now: AreaPrediction): number {
  const lab = labOfXyz(before.colour.xyz)
  return labDifference2000(lab, { ...labOfXyz(now.colour.xyz), l: lab.l })
}
