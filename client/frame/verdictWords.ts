import type { BackgroundPrediction } from '../../shared-core/predict/prediction.ts'

/** "2.1 stops", "0.3 stop": a count of stops in words, without its sign. */
export function stopsInWords(stops: number): string {
  const shown = Math.abs(stops).toFixed(1)
  return `${shown} ${Number(shown) <= 1 ? 'stop' : 'stops'}`
}

/** What the background reads as, in a line, before the finish unless the finish changes the verdict. */
export function verdictInWords(background: BackgroundPrediction): string {
  const worst = background.spots.reduce<BackgroundPrediction['spots'][number] | null>(
    (found, spot) => ((spot.stopsMissing ?? Infinity) > (found?.stopsMissing ?? -Infinity) ? spot : found),
    null,
  )
  const missing = background.stopsMissing
  const finished = background.verdictAfterFinish === 'white' && background.verdict !== 'white' ? '; the finish brings it to white' : ''
  if (background.verdict === 'white') {
    const inHand = missing !== null && missing < 0 ? `, ${stopsInWords(missing)} in hand` : ''
    return `Background: white from edge to edge${inHand}`
  }
  if (missing === null) return 'Background: dark, no light reaches all of it'
  const cast = worst?.cast === undefined || worst.cast === '' ? 'the colour' : worst.cast
  if (background.verdict === 'cast-left') return `Background: nearly white, ${cast} left; ${stopsInWords(missing)} short${finished}`
  return `Background: ${cast} stays; ${stopsInWords(missing)} short of white${finished}`
}
