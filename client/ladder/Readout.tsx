import type { Prediction } from '../../shared-core/predict/prediction.ts'
import { stopsInWords } from '../../shared-core/plan/entry/stops.ts'
import { shortAreaName, signedStops } from './areaNames.ts'
import type { PulledArea } from './areaPull.ts'
import { feedsInWords, type Touched } from './feeds.ts'

interface ReadoutProps {
  readonly prediction: Prediction
  readonly touched: Touched
  readonly pastRangeStops: number
  /** The area that is pulled to another level. */
  readonly pulled: PulledArea | null
}

/** Two quiet lines at the ladder's foot: what is touched, in words. */
export function Readout({ prediction, touched, pastRangeStops, pulled }: ReadoutProps) {
  const [first, second] = pulled ? pulledWords(prediction, pulled) : words(prediction, touched, pastRangeStops)
  return (
    <p className="ladder-readout">
      <span>{first}</span>
      <span>{second}</span>
    </p>
  )
}

function pulledWords({ areas, background }: Prediction, { areaId, wantedStops, nowStops, words: way }: PulledArea): readonly [string, string] {
  const area = areas.find(({ id }) => id === areaId)
  const name = area ? shortAreaName(area, background.behind) : ''
  return [`${name}: ${signedStops(wantedStops)} wanted, now ${signedStops(nowStops)}`, way]
}

function words(prediction: Prediction, touched: Touched, pastRangeStops: number): readonly [string, string] {
  const light = touched?.kind === 'light' && prediction.lights.find(({ id }) => id === touched.id)
  if (light) {
    const served = prediction.areas.find((area) => area.id === light.serves)
    const wanted = light.wantedStops === null ? '' : `, wanted ${signedStops(light.wantedStops)}`
    const first = `${light.letter} · ${light.powerText}${served ? ` · at the ${served.label}` : ''}${wanted}`
    if (pastRangeStops > 0) return [first, `at full power, and ${stopsInWords(pastRangeStops)} past it are asked`]
    if (pastRangeStops < 0) return [first, `at its lowest, and ${stopsInWords(pastRangeStops)} less are asked`]
    return [first, `${stopsInWords(light.stopsInHand)} in hand, ${stopsInWords(light.stopsAboveLowest)} down to the lowest`]
  }
  const area = touched?.kind === 'area' && prediction.areas.find(({ id }) => id === touched.id)
  if (area) return [`${area.label} ${signedStops(area.meter.stops)}`, feedsInWords(prediction, area.id)]
  return ['Stops from the aperture', 'Touch an area or a light: who feeds whom']
}
