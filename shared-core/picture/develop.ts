import { cameraMatrix } from '../colour/cameraMatrix.ts'
import { finishChannel, type Finish } from '../colour/finish.ts'
import { multiplyMatrices, type Matrix3 } from '../colour/matrix.ts'
import { encodedFromLinear, linearFromXyz } from '../spectra/srgb.ts'
import type { ClippedEdges } from './clippedEdges.ts'
import { strayAlongRow, strayLight, type StrayLight } from './strayLight.ts'

/** Colour space of the bytes: that of most displays, or the wider one of many newer. */
export type DisplaySpace = 'srgb' | 'display-p3'

export interface Development {
  readonly whiteBalanceKelvin: number
  /** Share of the frame's mean light that the lens spreads over everything. */
  readonly veilingGlare: number
  readonly finish: Finish
  readonly space: DisplaySpace
}

/**
 * From linear camera channels to what a display shows: stray light of the lens, clip by channel, colour matrix, finish,
 * gamut, encoding. In this order, since each would come out wrong before the one it follows.
 * @param linear three channels a pixel, before the clip
 * @param into four bytes a pixel
 * @param stray that of this picture and lens
 * @param edges pixels that are past stray light and clip already, in place of the picture's own
 * @param inPairs develops two pixels side by side that are alike once
 */
export function develop(
  linear: Float32Array, width: number, height: number, how: Development, into: Uint8ClampedArray,
  stray = strayLight(linear, width, height, how.veilingGlare), edges: ClippedEdges | null = null,
  inPairs = false,
): void {
  const tone = { finish: finishTable(how.finish), ...matricesFor(how) }
  const pixels = new Uint32Array(into.buffer, into.byteOffset, width * height)
  developPixels(linear, width, height, stray, tone, pixels, inPairs)
  if (edges !== null) developEdges(edges, pixels, tone)
}

function developEdges({ count, pixels: places, channels }: ClippedEdges, into: Uint32Array, tone: Tone): void {
  const developed = new Uint32Array(count)
  developPixels(channels, count, 1, NO_STRAY, tone, developed, false)
  for (let i = 0; i < count; i++) into[places[i]!] = developed[i]!
}

const NO_STRAY: StrayLight = { columns: 1, rows: 2, levels: new Float32Array(6) }

interface Tone extends Matrices {
  readonly finish: FinishTable | null
}

/** All in one loop: what it needs of matrices and tables is taken up once and not for every pixel. */
function developPixels(
  linear: Float32Array, width: number, height: number, stray: StrayLight, tone: Tone, pixels: Uint32Array, inPairs: boolean,
): void {
  const { finish, toDisplay, luminance: [wr, wg, wb], toFinish: [[a, b, c], [d, e, f], [g, h, i]] } = tone
  const { columns } = stray
  const row = new Float64Array(3 * columns)
  const perPixel = columns / width
  for (let y = 0; y < height; y++) {
    strayAlongRow(stray, y, height, row)
    // Between the middles of two cells the stray light goes in even steps.
    for (let cell = -1, from = 0; from < width; cell++) {
      const end = cell + 1 === columns ? width : Math.min(width, Math.ceil(((cell + 1.5) * width) / columns - 0.5))
      const left = 3 * Math.max(0, cell)
      const right = 3 * Math.min(columns - 1, cell + 1)
      const start = (from + 0.5) * perPixel - 0.5 - cell
      const stepRed = (row[right]! - row[left]!) * perPixel
      const stepGreen = (row[right + 1]! - row[left + 1]!) * perPixel
      const stepBlue = (row[right + 2]! - row[left + 2]!) * perPixel
      let veilRed = row[left]! + (row[right]! - row[left]!) * start
      let veilGreen = row[left + 1]! + (row[right + 1]! - row[left + 1]!) * start
      let veilBlue = row[left + 2]! + (row[right + 2]! - row[left + 2]!) * start
      const last = y * width + end
      for (let pixel = y * width + from, at = 3 * pixel; pixel < last; pixel++, at += 3) {
        let red = linear[at]! + veilRed
        let green = linear[at + 1]! + veilGreen
        let blue = linear[at + 2]! + veilBlue
        veilRed += stepRed
        veilGreen += stepGreen
        veilBlue += stepBlue
        if (red > 1) red = 1
        if (green > 1) green = 1
        if (blue > 1) blue = 1
        let r = a * red + b * green + c * blue
        let gr = d * red + e * green + f * blue
        let bl = g * red + h * green + i * blue
        if (finish !== null) {
          const fr = finished(finish, r)
          const fg = finished(finish, gr)
          const fb = finished(finish, bl)
          r = toDisplay[0][0] * fr + toDisplay[0][1] * fg + toDisplay[0][2] * fb
          gr = toDisplay[1][0] * fr + toDisplay[1][1] * fg + toDisplay[1][2] * fb
          bl = toDisplay[2][0] * fr + toDisplay[2][1] * fg + toDisplay[2][2] * fb
        }
        if (r < 0 || gr < 0 || bl < 0) {
          const lowest = r < gr ? (r < bl ? r : bl) : gr < bl ? gr : bl
          // As intoGamut in colour/display.ts: mixed with grey of the same luminance until no channel is below 0.
          let grey = wr * r + wg * gr + wb * bl
          grey = grey < 0 ? 0 : grey > CODE_STEPS ? CODE_STEPS : grey
          const kept = grey / (grey - lowest)
          r = grey + kept * (r - grey)
          gr = grey + kept * (gr - grey)
          bl = grey + kept * (bl - grey)
        }
        // One word a pixel, red in the lowest byte: every machine this runs on counts that way.
        pixels[pixel] = OPAQUE | (codes[bl | 0]! << 16) | (codes[gr | 0]! << 8) | codes[r | 0]!
        if (!inPairs || pixel + 1 >= last || linear[at + 3] !== linear[at] || linear[at + 4] !== linear[at + 1] || linear[at + 5] !== linear[at + 2]) continue
        pixels[pixel + 1] = pixels[pixel]!
        pixel++
        at += 3
        veilRed += stepRed
        veilGreen += stepGreen
        veilBlue += stepBlue
      }
      from = Math.max(from, end)
    }
  }
}

const OPAQUE = 0xff000000

interface Matrices {
  /** From channels to linear sRGB, where the finish works; where there is no finish, all the way to the display. */
  readonly toFinish: Matrix3
  /** What comes to the display is counted in CODE_STEPS. */
  readonly toDisplay: Matrix3
  /** Luminance of the display's primaries. */
  readonly luminance: readonly [number, number, number]
}

const CODE_STEPS = 16_384
const CODE_SCALE: Matrix3 = [[CODE_STEPS, 0, 0], [0, CODE_STEPS, 0], [0, 0, CODE_STEPS]]
const SAME: Matrix3 = [[1, 0, 0], [0, 1, 0], [0, 0, 1]]
/** Linear sRGB to linear Display P3, both D65: from the primaries of IEC 61966-2-1 and SMPTE EG 432-1. */
const P3_FROM_SRGB: Matrix3 = [
  [0.8224619688, 0.1775380312, 0],
  [0.0331941988, 0.9668058012, 0],
  [0.0170826307, 0.0723974407, 0.9105199286],
]
const SRGB_LUMINANCE = [0.2126390059, 0.7151686788, 0.0721923154] as const
const P3_LUMINANCE = [0.2289745641, 0.6917385218, 0.0792869141] as const

function matricesFor({ whiteBalanceKelvin, space, finish }: Development): Matrices {
  const toSrgb = multiplyMatrices(XYZ_TO_SRGB, cameraMatrix(whiteBalanceKelvin))
  const isWide = space === 'display-p3'
  const toDisplay = multiplyMatrices(CODE_SCALE, isWide ? P3_FROM_SRGB : SAME)
  return {
    toFinish: isNone(finish) ? multiplyMatrices(toDisplay, toSrgb) : toSrgb,
    toDisplay,
    luminance: isWide ? P3_LUMINANCE : SRGB_LUMINANCE,
  }
}

const [fromX, fromY, fromZ] = [linearFromXyz([1, 0, 0]), linearFromXyz([0, 1, 0]), linearFromXyz([0, 0, 1])]
const XYZ_TO_SRGB: Matrix3 = [[fromX[0], fromY[0], fromZ[0]], [fromX[1], fromY[1], fromZ[1]], [fromX[2], fromY[2], fromZ[2]]]

/** Steps of the square root from 0 to 1, and as many again from there to the root of MOST. */
const FINISH_STEPS = 2048

function isNone(finish: Finish): boolean {
  return finish.exposureStops === 0 && finish.contrast === 0 && finish.whitePointStops === 0 && finish.blackPoint === 0
}

interface FinishTable {
  /** Over the square root of 0-MOST: finest near black, as the eye is. */
  readonly values: Float64Array
  /** Below 0 the finish is a straight line. */
  readonly slopeBelow: number
}

let lastFinish: Finish | null = null
let lastTable: FinishTable | null = null

/** The finish as a table, or null when there is none. */
function finishTable(finish: Finish): FinishTable | null {
  if (isNone(finish)) return null
  if (lastFinish !== finish || lastTable === null) {
    const values = Float64Array.from({ length: Math.sqrt(MOST) * FINISH_STEPS + 1 }, (_, i) => {
      const root = i / FINISH_STEPS
      return finishChannel(root * root, finish)
    })
    lastTable = { values, slopeBelow: values[0]! - finishChannel(-1, finish) }
    lastFinish = finish
  }
  return lastTable
}

/** A finished channel. Never above MOST, for the finish lifts nothing past white that was not past it before. */
function finished({ values, slopeBelow }: FinishTable, value: number): number {
  if (value <= 0) return values[0]! + slopeBelow * value
  if (value >= MOST) return values[values.length - 1]!
  const at = Math.sqrt(value) * FINISH_STEPS
  const i = at | 0
  return values[i]! + (values[i + 1]! - values[i]!) * (at - i)
}

/** More than any clipped channels come to after matrix and finish: 2.5 at the most, over every white balance. */
const MOST = 4
/** Codes by linear light, of the middle of each step; sRGB and Display P3 share the curve. Five steps to the narrowest code, near black. */
const codes = Uint8Array.from({ length: MOST * CODE_STEPS + 1 }, (_, i) => Math.round(255 * encodedFromLinear(Math.min(1, (i + 0.5) / CODE_STEPS))))
