import { stopsFromTimes } from '../arithmetic/portable.ts'
import { luminousShare } from '../spectra/photopic.ts'
import type { EmissionSpectrum, TransmittanceSpectrum } from '../spectra/spectrum.ts'
import { channelsOf, channelsThrough } from './camera.ts'
import type { CameraRgb } from './triples.ts'

/** A sheet that measures as letting nothing through is told as losing this much: past every meter, and still a number. */
const MOST_LOSS_STOPS = 40

/** Stops lost where `share` of the light is left. */
function lossStops(share: number): number {
  return Math.min(-stopsFromTimes(share), MOST_LOSS_STOPS)
}

export interface GelLosses {
  /** What an incident meter loses. */
  readonly meterLossStops: number
  /** What each camera channel loses against the clear light. */
  readonly channelLossStops: CameraRgb
  /** The least of the three: decides how soon colour burns. */
  readonly strongestChannelLossStops: number
  /** Stops past the point where clear light turns white until the gelled light reads white too. */
  readonly whiteOutStops: number
}

/**
 * What a gel costs, by meter and by channel. The clear light turns white when its weakest channel clips, the gelled one
 * when its own weakest does; white-out is the way between. With a white balance for the flash itself that is simply the
 * loss of the gel's weakest channel. No loss is told as more than 40 stops.
 * @param gel curve of all sheets together.
 * @param gains white balance in use.
 */
export function gelLosses(parts: {
  readonly flash: EmissionSpectrum
  readonly gel: TransmittanceSpectrum
  readonly gains: CameraRgb
}): GelLosses {
  const { flash, gel, gains } = parts
  const clear = channelsOf(flash, gains)
  const gelled = channelsThrough(flash, gel, gains)
  const lossOf = (k: 0 | 1 | 2): number => lossStops(gelled[k] / clear[k])
  const channelLossStops: CameraRgb = [lossOf(0), lossOf(1), lossOf(2)]
  return {
    meterLossStops: lossStops(luminousShare(flash, gel)),
    channelLossStops,
    strongestChannelLossStops: Math.min(...channelLossStops),
    whiteOutStops: lossStops(Math.min(...gelled) / Math.min(...clear)),
  }
}
