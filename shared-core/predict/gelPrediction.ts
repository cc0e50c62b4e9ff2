import { clipChannels, channelsThrough } from '../colour/camera.ts'
import { xyzFromChannels } from '../colour/cameraMatrix.ts'
import { displayHex } from '../colour/display.ts'
import { NO_FINISH } from '../colour/finish.ts'
import { colourWords } from '../colour/hueWords.ts'
import type { CameraRgb, Xyz } from '../colour/triples.ts'
import { gelLosses } from '../colour/whiteOut.ts'
import { spectrumOf, type EmissionSpectrum, type ReflectanceSpectrum } from '../spectra/spectrum.ts'
import type { LightColour } from './lightColour.ts'
import type { GelPrediction } from './prediction.ts'

const WHITE = spectrumOf<ReflectanceSpectrum>(() => 1)
/** Swatches show the colour with its strongest channel here: bright enough to judge, short of any clip. */
const WHITE_PEAK = 0.8
const SKIN_PEAK = 0.6

/** What the sheets of one light do: losses by meter and by camera, and their colour on white and on this skin. */
export function gelPrediction(
  colour: LightColour, names: readonly string[], gains: CameraRgb, whiteBalanceKelvin: number, skin: ReflectanceSpectrum,
): GelPrediction {
  const { flash, gel, emission } = colour
  const losses = gel ? gelLosses({ flash, gel, gains }) : null
  const onWhite = swatchXyz(emission, WHITE, WHITE_PEAK, gains, whiteBalanceKelvin)
  const onSkin = swatchXyz(emission, skin, SKIN_PEAK, gains, whiteBalanceKelvin)
  return {
    clear: gel === null,
    name: gel === null ? 'clear' : names.join(' + '),
    meterLossStops: losses?.meterLossStops ?? 0,
    strongestChannelLossStops: losses?.strongestChannelLossStops ?? 0,
    whiteOutStops: losses?.whiteOutStops ?? 0,
    channelLossStops: losses?.channelLossStops ?? [0, 0, 0],
    onWhite: displayHex(onWhite, NO_FINISH).hex,
    onSkin: displayHex(onSkin, NO_FINISH).hex,
    words: gel === null ? 'clear' : colourWords(onWhite),
  }
}

function swatchXyz(
  light: EmissionSpectrum, surface: ReflectanceSpectrum, peak: number, gains: CameraRgb, whiteBalanceKelvin: number,
): Xyz {
  const channels = channelsThrough(light, surface, gains)
  const strongest = Math.max(...channels)
  // Nothing through the sheet is black.
  const scale = strongest > 0 ? peak / strongest : 0
  return xyzFromChannels(clipChannels([channels[0] * scale, channels[1] * scale, channels[2] * scale]), whiteBalanceKelvin)
}
