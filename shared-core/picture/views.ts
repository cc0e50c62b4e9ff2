import { stopsFromTimes } from '../arithmetic/portable.ts'

/** Other ways to look at the same linear picture: as an instrument shows it, not as a display does. */
export const pictureViews = ['picture', 'stops', 'leaders', 'clipping'] as const
export type PictureView = (typeof pictureViews)[number]

/** What a spot meter calls mid-grey, as a share of clip: K 12.5 and q 0.65 put it 3.263 stops below (ISO 12232, ISO 2720). */
export const GREY_OF_CLIP = (0.65 * 12.5) / 78

/** Weights of linear channels in brightness; close enough to the camera's own for a band a stop wide. */
const RED = 0.25
const GREEN = 0.65
const BLUE = 0.1

/** How bright a pixel's channels are together, in their own unit. */
export function brightness(red: number, green: number, blue: number): number {
  return RED * red + GREEN * green + BLUE * blue
}

/** Stops over (positive) or under mid-grey of a pixel's channels; -Infinity for black. */
export function stopsOverGrey(red: number, green: number, blue: number): number {
  return stopsOfBrightness(brightness(red, green, blue))
}

/** The same of a brightness, 1 is clip. */
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

/** Bands of whole stops around mid-grey, with a dark line where one ends. */
export function drawStops(linear: Float32Array, width: number, height: number, into: Uint8ClampedArray): void {
  const bands = new Int8Array(width * height)
  for (let p = 0; p < bands.length; p++) {
    const stops = stopsOverGrey(linear[3 * p]!, linear[3 * p + 1]!, linear[3 * p + 2]!)
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
      const level = Math.min(1, brightness(r, g, b))
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
