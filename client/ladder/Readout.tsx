import type { Prediction } from '../../shared-core/predict/prediction.ts'
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

/** Two quiet lines at the ladder's foot: what is touched, in words few enough for its usual width. */
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
    const first = `${light.letter} · ${light.powerText}${served ? ` · ${shortAreaName(served, prediction.background.behind)}` : ''}${wanted}`
    if (pastRangeStops > 0) return [first, `full power; ${pastRangeStops.toFixed(1)} past it is asked`]
    if (pastRangeStops < 0) return [first, `lowest power; ${(-pastRangeStops).toFixed(1)} less is asked`]
    return [first, `${light.stopsInHand.toFixed(1)} in hand, ${light.stopsAboveLowest.toFixed(1)} down to lowest`]
  }
  const area = touched?.kind === 'area' && prediction.areas.find(({ id }) => id === touched.id)
  if (area) return [`${area.label} ${signedStops(area.meter.stops)}`, feedsInWords(prediction, area.id)]
  return ['Stops from the aperture', 'Touch one: who feeds whom']
}
