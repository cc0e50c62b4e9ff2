import type { LinearSrgb } from '../colour/triples.ts'
import { linearFromEncoded } from '../spectra/srgb.ts'
import type { PicturePoint } from './align.ts'

/** A picture as a browser decodes it: four bytes a pixel, sRGB. */
export interface Bytes {
  readonly width: number
  readonly height: number
  readonly rgba: Uint8ClampedArray | Uint8Array
}

/** Radius of what stands for an area, as a share of the Frame's height: about a centimetre on a half-length portrait. */
export const DISC_RADIUS = 0.011
/** A disc that lies less than this inside the photograph says nothing. */
const LEAST_INSIDE = 0.7
/** Past this many steps across, every so many pixels are enough for a median. */
const MOST_STEPS = 24

const linearOfCode = Float64Array.from({ length: 256 }, (_, code) => linearFromEncoded(code / 255))

/**
 * The colour of a small disc: the median of each channel, so that a lash, a speck or a catchlight does not count.
 * @returns linear sRGB, or null where the disc lies outside the picture
 */
export function discColour({ width, height, rgba }: Bytes, middle: PicturePoint, radiusPixels: number): LinearSrgb | null {
  const radius = Math.max(1.5, radiusPixels)
  const step = Math.max(1, (2 * radius) / MOST_STEPS)
  const channels: [number[], number[], number[]] = [[], [], []]
  let asked = 0
  for (let dy = -radius; dy <= radius; dy += step) {
    for (let dx = -radius; dx <= radius; dx += step) {
      if (dx * dx + dy * dy > radius * radius) continue
      asked++
      const [x, y] = [Math.floor(middle.x + dx), Math.floor(middle.y + dy)]
      if (x < 0 || y < 0 || x >= width || y >= height) continue
      for (const k of [0, 1, 2] as const) channels[k].push(rgba[4 * (y * width + x) + k]!)
    }
  }
  if (channels[0].length < LEAST_INSIDE * asked) return null
  return [linearMedian(channels[0]), linearMedian(channels[1]), linearMedian(channels[2])]
}

function linearMedian(codes: number[]): number {
  codes.sort((a, b) => a - b)
  const at = (codes.length - 1) / 2
  return (linearOfCode[codes[Math.floor(at)]!]! + linearOfCode[codes[Math.ceil(at)]!]!) / 2
}
