import type { BackgroundPrediction } from '../../shared-core/predict/prediction.ts'

/** "2.1 stops", "0.3 stop": a count of stops in words, without its sign. */
export function stopsInWords(stops: number): string {
  const shown = Math.abs(stops).toFixed(1)
  return `${shown} ${Number(shown) <= 1 ? 'stop' : 'stops'}`
}

/**
 * What the background reads as, in a line: the hue that stays (the centre's, or the worst spot's where the centre is
 * better off) and what the worst spot still wants.
 */
export function verdictInWords({ spots, verdict, verdictAfterFinish, stopsMissing }: BackgroundPrediction): string {
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
