import type { GroundFinder } from './ground.ts'
import { BACKGROUND } from './pixelKinds.ts'
import type { SurfaceSamples } from './surfaceSamples.ts'

/**
 * What of the background the camera sees: rows of whole pixels on one ground, and around edges single points, each a
 * quarter of its pixel.
 */
export interface GroundSamples {
  readonly finder: GroundFinder
  /** Four numbers a run: ground, row, first column, end column. */
  readonly runs: Int32Array
  readonly pointCount: number
  /** Ascending. */
  readonly pointPixels: Uint32Array
  /** Which of its pixel's four places, 0-3. */
  readonly pointQuarters: Uint8Array
  readonly pointGrounds: Int16Array
  readonly pointX: Float32Array
  readonly pointY: Float32Array
  /** For each ground that is seen, the part of the Frame it shows in: left, top, right, bottom; null for the others. */
  readonly bounds: readonly (Float64Array | null)[]
}

const NOT_HERE = -1

export function groundSamples(finder: GroundFinder, subject: Pick<SurfaceSamples, 'kinds' | 'gaps'>, width: number, height: number): GroundSamples {
  const { kinds, gaps } = subject
  const whole = new Int16Array(width * height).fill(NOT_HERE)
  for (let pixel = 0; pixel < kinds.length; pixel++) {
    if (kinds[pixel] !== BACKGROUND) continue
    const x = pixel % width
    whole[pixel] = finder.at((x + 0.5) / width, ((pixel - x) / width + 0.5) / height)
  }
  const points: number[] = []
  for (const gap of gaps) points.push(gap)
  const isSplit = edges(whole, width, height)
  const runs: number[] = []
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width;) {
      const pixel = y * width + x
      const ground = whole[pixel]!
      if (ground === NOT_HERE || isSplit[pixel]) {
        if (ground !== NOT_HERE) points.push(4 * pixel, 4 * pixel + 1, 4 * pixel + 2, 4 * pixel + 3)
        x++
        continue
      }
      const from = x
      while (x < width && whole[y * width + x] === ground && !isSplit[y * width + x]) x++
      runs.push(ground, y, from, x)
    }
  }
  points.sort((a, b) => a - b)
  return withBounds(finder, Int32Array.from(runs), points, width, height)
}

/** Pixels beside which another ground begins. */
function edges(whole: Int16Array, width: number, height: number): Uint8Array {
  const isSplit = new Uint8Array(whole.length)
  const compare = (a: number, b: number): void => {
    if (whole[a] === whole[b] || whole[a] === NOT_HERE || whole[b] === NOT_HERE) return
    isSplit[a] = 1
    isSplit[b] = 1
  }
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const pixel = y * width + x
      if (x + 1 < width) compare(pixel, pixel + 1)
      if (y + 1 < height) compare(pixel, pixel + width)
    }
  }
  return isSplit
}

function withBounds(finder: GroundFinder, runs: Int32Array, points: readonly number[], width: number, height: number): GroundSamples {
  const count = points.length
  const pointPixels = new Uint32Array(count)
  const pointQuarters = new Uint8Array(count)
  const pointGrounds = new Int16Array(count)
  const pointX = new Float32Array(count)
  const pointY = new Float32Array(count)
  const bounds: (Float64Array | null)[] = finder.grounds.map(() => null)
  const reach = (ground: number, left: number, top: number, right: number, bottom: number): void => {
    const box = (bounds[ground] ??= Float64Array.of(Infinity, Infinity, -Infinity, -Infinity))
    box[0] = Math.min(box[0]!, left)
    box[1] = Math.min(box[1]!, top)
    box[2] = Math.max(box[2]!, right)
    box[3] = Math.max(box[3]!, bottom)
  }
  for (let i = 0; i < count; i++) {
    const pixel = points[i]! >> 2
    const k = points[i]! & 3
    const x = pixel % width
    const frameX = (x + 0.25 + 0.5 * (k & 1)) / width
    const frameY = ((pixel - x) / width + 0.25 + 0.5 * (k >> 1)) / height
    pointPixels[i] = pixel
    pointQuarters[i] = k
    pointX[i] = frameX
    pointY[i] = frameY
    pointGrounds[i] = finder.at(frameX, frameY)
    reach(pointGrounds[i]!, frameX, frameY, frameX, frameY)
  }
  for (let r = 0; r < runs.length; r += 4) {
    const y = (runs[r + 1]! + 0.5) / height
    reach(runs[r]!, (runs[r + 2]! + 0.5) / width, y, (runs[r + 3]! - 0.5) / width, y)
  }
  return { finder, runs, pointCount: count, pointPixels, pointQuarters, pointGrounds, pointX, pointY, bounds }
}
