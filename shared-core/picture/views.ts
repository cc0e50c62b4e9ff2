import { stopsFromTimes } from '../arithmetic/portable.ts'
import { GREY_OF_CLIP, stopsOverGrey, type ChannelWeights } from './spotReading.ts'

/** Other ways to look at the same linear picture: as an instrument shows it, not as a display does. */
export const pictureViews = ['picture', 'stops', 'leaders', 'clipping'] as const
export type PictureView = (typeof pictureViews)[number]

/** Stops over (positive) or under mid-grey of a luminance, 1 is the clip of a body as rated; -Infinity for black. */
export function stopsOfBrightness(bright: number): number {
  return stopsFromTimes(bright / GREY_OF_CLIP)
}

export const HIGHEST_BAND = 4
export const LOWEST_BAND = -7

/** Grey of the band of whole stops that a level falls in: darkest at the lowest, one even step a stop. */
export function greyOfBand(stops: number): number {
  const band = Math.min(HIGHEST_BAND, Math.max(LOWEST_BAND, Math.round(stops)))
  return Math.round(24 + ((band - LOWEST_BAND) / (HIGHEST_BAND - LOWEST_BAND)) * 200)
}

/** Bands of whole stops around mid-grey, with a dark line where one ends. @param weights see spotWeights */
export function drawStops(linear: Float32Array, width: number, height: number, weights: ChannelWeights, into: Uint8ClampedArray): void {
  const bands = new Int8Array(width * height)
  for (let p = 0; p < bands.length; p++) {
    const stops = stopsOverGrey(weights, linear[3 * p]!, linear[3 * p + 1]!, linear[3 * p + 2]!)
    bands[p] = Math.min(HIGHEST_BAND, Math.max(LOWEST_BAND, Math.round(stops)))
  }
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = y * width + x
      const band = bands[p]!
      const ends = (x + 1 < width && bands[p + 1]! !== band) || (y + 1 < height && bands[p + width]! !== band)
      const grey = ends ? 12 : greyOfBand(band)
      into[4 * p] = grey
      into[4 * p + 1] = grey
      into[4 * p + 2] = grey
      into[4 * p + 3] = 255
    }
  }
}

const STRIPE_PIXELS = 8

/**
 * Which channels clip, by pattern and not by colour alone: red leans right, green stands, blue leans left; where all three
 * clip the picture is plain white paper. The rest is the picture in dim grey.
 * @returns which channels clip by pixel: 1 for red, 2 for green and 4 for blue, added up
 */
export function drawClipping(linear: Float32Array, width: number, height: number, into: Uint8ClampedArray): Uint8Array {
  const clipped = new Uint8Array(width * height)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = y * width + x
      const [r, g, b] = [linear[3 * p]!, linear[3 * p + 1]!, linear[3 * p + 2]!]
      clipped[p] = (r >= 1 ? 1 : 0) + (g >= 1 ? 2 : 0) + (b >= 1 ? 4 : 0)
      const level = Math.min(1, 0.25 * r + 0.65 * g + 0.1 * b)
      const grey = 18 + 70 * Math.sqrt(level)
      let [red, green, blue] = [grey, grey, grey]
      if (r >= 1 && g >= 1 && b >= 1) [red, green, blue] = [222, 222, 218]
      else {
        if (r >= 1 && (x + y) % STRIPE_PIXELS < 3) [red, green, blue] = [214, 92, 84]
        if (g >= 1 && x % STRIPE_PIXELS < 3) [red, green, blue] = [96, 190, 104]
        if (b >= 1 && (x - y + height * STRIPE_PIXELS) % STRIPE_PIXELS < 3) [red, green, blue] = [98, 122, 226]
      }
      into[4 * p] = red
      into[4 * p + 1] = green
      into[4 * p + 2] = blue
      into[4 * p + 3] = 255
    }
  }
  return clipped
}
