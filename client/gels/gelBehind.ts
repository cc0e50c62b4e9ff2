import type { Prediction } from '../../shared-core/predict/prediction.ts'

/**
 * How far clear light from this light alone, at its power, lies over the level at which the background's centre turns
 * white, in stops; negative is short of it. A gel reads white behind when its white-out is no more than that. Null when
 * the light gives nothing there.
 */
export function clearOverWhite(prediction: Prediction, lightId: string): number | null {
  const centre = prediction.areas.find(({ id }) => id === 'background-centre')
  const from = centre?.byLight.find((one) => one.lightId === lightId)
  const light = prediction.lights.find(({ id }) => id === lightId)
  const weakest = from ? Math.min(...from.channels) : 0
  if (!light || !(weakest > 0)) return null
  return Math.log2(weakest) + light.gel.whiteOutStops
}

/** Fainter than this a light does not count as lighting the background. */
const FAINT_STOPS = -6

/** "white behind: no, 1.2 short": a gel on this light, at its power now. */
export function whiteBehindInWords(clearOverWhiteStops: number | null, whiteOutStops: number): string {
  if (clearOverWhiteStops === null || clearOverWhiteStops < FAINT_STOPS) return 'does not reach the background'
  const short = whiteOutStops - clearOverWhiteStops
  return short <= 0 ? 'white behind: yes' : `white behind: no, ${short.toFixed(1)} short`
}
