import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'
import { cameraMatrix } from '../colour/cameraMatrix.ts'
import { SPOT_CONSTANT } from '../exposure/meter.ts'
import { LENS_FACTOR, SATURATION_CONSTANT } from '../exposure/saturation.ts'

/** Luminance of each camera channel at clip; for `luminanceWeights` all are above 0 and add up to 1. */
export type ChannelWeights = readonly [red: number, green: number, blue: number]

/** What of clip a spot meter calls mid-grey: K 12.5 and q 0.65 put it 3.263 stops below (ISO 12232, ISO 2720). */
export const GREY_OF_CLIP = (LENS_FACTOR * SPOT_CONSTANT) / SATURATION_CONSTANT

/**
 * How channels are read as luminance: that row of the camera's own matrix, as for a colour. The one definition for the
 * picture, the areas and the shares of lights: channels are all they have in common. Under a deep blue gel a luminance
 * meter reads up to half a stop less, because no three channels know the eye's curve.
 */
export function luminanceWeights(whiteBalanceKelvin: number): ChannelWeights {
  return cameraMatrix(whiteBalanceKelvin)[1]
}

/** The same in units of what a spot meter calls mid-grey; it lies lower for a body that clips later than rated. */
export function spotWeights(
  { whiteBalanceKelvin, headroomStops }: { readonly whiteBalanceKelvin: number, readonly headroomStops: number },
): ChannelWeights {
  const [red, green, blue] = luminanceWeights(whiteBalanceKelvin)
  const perGrey = timesFromStops(headroomStops) / GREY_OF_CLIP
  return [red * perGrey, green * perGrey, blue * perGrey]
}

/** Channels before any clip, weighed and added up. */
export function weighed(weights: ChannelWeights, red: number, green: number, blue: number): number {
  return weights[0] * red + weights[1] * green + weights[2] * blue
}

/** Stops over (positive) or under mid-grey of channels before any clip; -Infinity for black. @param weights see spotWeights */
export function stopsOverGrey(weights: ChannelWeights, red: number, green: number, blue: number): number {
  return stopsFromTimes(weighed(weights, red, green, blue))
}
