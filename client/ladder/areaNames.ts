import { formatStops } from '../../shared-core/plan/entry/stops.ts'
import type { AreaPrediction, BackgroundPrediction } from '../../shared-core/predict/prediction.ts'

/** An area's name where there is little room: "cheek L", "paper low R". Left and right are the camera's. */
export function shortAreaName(area: Pick<AreaPrediction, 'label'>, behind: BackgroundPrediction['behind']): string {
  return area.label
    .replace(/^camera-left (.+)$/, '$1 L')
    .replace(/^camera-right (.+)$/, '$1 R')
    .replace(/^background/, behind)
    .replace(/ bottom\b/, ' low')
    .replace(/ behind$/, '')
    .replace(/ left$/, ' L')
    .replace(/ right$/, ' R')
    .replace(/ centre$/, ' mid')
}

/** "+0.3", "−1.7", "0.0": stops from the taking aperture, or "none" where no light is. */
export function signedStops(stops: number | null, digits = 1): string {
  return stops === null ? 'none' : formatStops(stops, digits)
}
