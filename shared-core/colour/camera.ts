import { flashSpectrum } from '../spectra/flash.ts'
import { WAVELENGTH_COUNT } from '../spectra/spectrum.ts'
import { cameraResponses } from './cameraResponse.ts'
import type { CameraRgb } from './triples.ts'

const [redResponse, greenResponse, blueResponse] = cameraResponses

/**
 * Readings of the generic camera for a light, linear in it.
 * @param light what reaches the lens: flash × gel × reflectance, in photopic units times the luminous quantity (see
 *   flashSpectrum).
 * @param gains white balance; see whiteBalanceGains. With gains for the light's own colour, a clear light of luminous
 *   quantity 1 on a perfect white reads about 1, 1, 1.
 */
export function channelsOf(light: Float64Array, gains: CameraRgb): CameraRgb {
  let red = 0
  let green = 0
  let blue = 0
  for (let i = 0; i < WAVELENGTH_COUNT; i++) {
    const power = light[i] as number
    red += power * (redResponse[i] as number)
    green += power * (greenResponse[i] as number)
    blue += power * (blueResponse[i] as number)
  }
  return [red * gains[0], green * gains[1], blue * gains[2]]
}

/** As channelsOf for light × curve, without making the product: the inner loop of every prediction. */
export function channelsThrough(light: Float64Array, curve: Float64Array, gains: CameraRgb): CameraRgb {
  let red = 0
  let green = 0
  let blue = 0
  for (let i = 0; i < WAVELENGTH_COUNT; i++) {
    const power = (light[i] as number) * (curve[i] as number)
    red += power * (redResponse[i] as number)
    green += power * (greenResponse[i] as number)
    blue += power * (blueResponse[i] as number)
  }
  return [red * gains[0], green * gains[1], blue * gains[2]]
}

/** Full well: each channel stops at 1 by itself. Before the colour matrix, or hues would come out wrong. */
export function clipChannels([red, green, blue]: CameraRgb): CameraRgb {
  return [Math.min(red, 1), Math.min(green, 1), Math.min(blue, 1)]
}

const UNIT_GAINS: CameraRgb = [1, 1, 1]
/** The white balance at which green is anchored: clear flash of this temperature on perfect white reads 1, 1, 1. */
export const ANCHOR_KELVIN = 5_500
const GREEN_GAIN = 1 / channelsOf(flashSpectrum(ANCHOR_KELVIN), UNIT_GAINS)[1]

/**
 * White balance as a camera does it: green stays, red and blue are scaled until a clear flash of `kelvin` on white is
 * neutral. Green is fixed so that this flash reads 1 at luminous quantity 1 when `kelvin` is 5500. Under other lights a
 * neutral white reads a little off 1, since a sensor's green is not the eye's luminance: 0.2 stop less at 3200 K.
 * @param kelvin 1000-25000; clamped as in flashSpectrum.
 */
export function whiteBalanceGains(kelvin: number): CameraRgb {
  const [red, green, blue] = channelsOf(flashSpectrum(kelvin), UNIT_GAINS)
  const level = green * GREEN_GAIN
  return [level / red, GREEN_GAIN, level / blue]
}
