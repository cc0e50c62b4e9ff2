import { stopsInWords } from '../../shared-core/plan/entry/stops.ts'
import type { Backdrop } from '../../shared-core/plan/schema/look.ts'
import type { AreaPrediction, Prediction } from '../../shared-core/predict/prediction.ts'
import { signedStops } from '../ladder/areaNames.ts'

/** What the background reads as, in a line: measured against white only where white is what is wanted. */
export function backgroundInWords({ background, areas }: Pick<Prediction, 'background' | 'areas'>, intent: Backdrop['intent']): string {
  if (intent === 'clean-white' || background.verdict !== 'not-white') return verdictInWords(background)
  return colourInWords(areas.filter((area) => area.id.startsWith('background-')), intent)
}

/** "Background: deep green glow, −0.3 in the middle, down to −1.4 in the corners" */
function colourInWords(spots: readonly AreaPrediction[], intent: Backdrop['intent']): string {
  const centre = spots.find(({ id }) => id === 'background-centre')
  const corners = spots.filter((spot) => spot !== centre).flatMap(({ meter }) => meter.stops ?? [])
  if (centre === undefined || centre.meter.stops === null || corners.length === 0) return 'Background: dark'
  const glow = intent === 'glow' ? ' glow' : ''
  const lowest = Math.min(...corners)
  const corner = centre.meter.stops - lowest < 0.25 ? 'even to the corners' : `down to ${signedStops(lowest)} in the corners`
  return `Background: ${centre.colour.words}${glow}, ${signedStops(centre.meter.stops)} in the middle, ${corner}`
}

/**
 * How white the background reads, in a line: the hue that stays (the centre's, or the worst spot's where the centre is
 * better off) and what the worst spot still wants.
 */
export function verdictInWords({ spots, verdict, verdictAfterFinish, stopsMissing }: Prediction['background']): string {
  if (verdict === 'white') {
    const inHand = stopsMissing !== null && stopsMissing < 0 ? `, ${stopsInWords(stopsMissing)} in hand` : ''
    return `Background: white from edge to edge${inHand}`
  }
  if (stopsMissing === null) return 'Background: dark in places, no light reaches all of it'
  const centre = spots.find(({ areaId }) => areaId === 'background-centre')
  const worst = spots.find((spot) => spot.stopsMissing === stopsMissing) ?? centre
  const isAllOver = centre !== undefined && centre.verdict === verdict && !centre.cast.startsWith('near white')
  const spot = isAllOver ? centre : worst
  const where = isAllOver || spot === undefined ? '' : ` at ${spot.label.replace(/^background /, '')}`
  const hue = spot === undefined || spot.cast === '' ? 'its colour' : spot.cast
  const finished = verdictAfterFinish === 'white' ? '; the finish brings it to white' : ''
  if (verdict === 'cast-left') return `Background: nearly white, ${hue} left${where}; ${stopsInWords(stopsMissing)} short${finished}`
  return `Background: ${hue} stays${where}; ${stopsInWords(stopsMissing)} short of white${finished}`
}
