import { netPlace, type ComposeRoom, type LitLayer } from './compose.ts'
import type { EdgePixels } from './edgePixels.ts'
import { strayAlongRow, type StrayLight } from './strayLight.ts'
import type { View } from './view.ts'

/** Pixels where something past clip meets something below it, as they are after the clip. */
export interface ClippedEdges {
  readonly count: number
  /** Ascending. */
  readonly pixels: Uint32Array
  /** Three channels each, 0-1: the lens's stray light is in them, and the clip is done. */
  readonly channels: Float32Array
}

/**
 * Edges against what is past clip. A pixel of this picture stands for a hundred photosites and more of a camera, and
 * each of those clips by itself before the picture is made small: half a pixel of hair before a white four stops past
 * clip is half white, where the clipped mean would be all white. So the samples of such a pixel are clipped one by one,
 * each with the stray light on it, and averaged then. Where nothing is past clip, mean and clip come to the same and the
 * pixel is left out.
 * @param room as composeLinear left it for these lights
 * @param linear the picture before the lens, as composeLinear made it: not changed
 */
export function clippedEdges(
  view: View, edges: EdgePixels, lights: readonly LitLayer[], room: ComposeRoom, linear: Float32Array, stray: StrayLight,
): ClippedEdges {
  const { width, height } = view
  const { pixels } = edges
  const row = new Float64Array(3 * stray.columns)
  const found = new Uint32Array(pixels.length)
  const channels = new Float32Array(3 * pixels.length)
  const quarters = new Float64Array(12)
  let count = 0
  let lastRow = -1
  for (let i = 0; i < pixels.length; i++) {
    const pixel = pixels[i]!
    const at = 3 * pixel
    const x = pixel % width
    const y = (pixel - x) / width
    if (y !== lastRow) strayAlongRow(stray, y, height, row)
    lastRow = y
    const place = ((x + 0.5) * stray.columns) / width - 0.5
    const cell = place <= 0 ? 0 : Math.min(stray.columns - 2, place | 0)
    const along = place <= 0 ? 0 : Math.min(1, place - cell)
    const c = 3 * cell
    const red = row[c]! + along * (row[c + 3]! - row[c]!)
    const green = row[c + 1]! + along * (row[c + 4]! - row[c + 1]!)
    const blue = row[c + 2]! + along * (row[c + 5]! - row[c + 2]!)
    // No sample is more than four times the mean.
    if (4 * linear[at]! + red <= 1 && 4 * linear[at + 1]! + green <= 1 && 4 * linear[at + 2]! + blue <= 1) continue
    quarters.fill(0)
    addEntries(quarters, view, room.corners.channels, edges.entries[i]!, edges.entries[i + 1]!, pixel)
    addPoints(quarters, view, room, edges.points[i]!, edges.points[i + 1]!)
    addEyes(quarters, view, lights, edges.eyes[i]!, edges.eyes[i + 1]!)
    const into = 3 * count
    if (clipOneByOne(quarters, 0, linear[at]!, red, channels, into) |
      clipOneByOne(quarters, 1, linear[at + 1]!, green, channels, into + 1) |
      clipOneByOne(quarters, 2, linear[at + 2]!, blue, channels, into + 2)) found[count++] = pixel
  }
  return { count, pixels: found, channels }
}

/** Writes one channel's mean after the clip. @returns 1 if that is not the clipped mean */
function clipOneByOne(quarters: Float64Array, channel: number, mean: number, veil: number, into: Float32Array, at: number): number {
  const full = 0.25 * (1 - veil)
  let clipped = 0
  let sum = 0
  for (let k = channel; k < 12; k += 3) {
    const quarter = quarters[k]!
    if (quarter > full) clipped++
    sum += quarter > full ? 0.25 : quarter + 0.25 * veil
  }
  into[at] = clipped === 0 ? mean + veil : sum
  return clipped > 0 && clipped < 4 ? 1 : 0
}

function addEntries(quarters: Float64Array, { samples }: View, colours: Float32Array, from: number, end: number, pixel: number): void {
  const { pixels, corners, weights } = samples
  for (let s = from, t = 3 * from; s < end && pixels[s] === pixel; s++, t += 3) {
    const at = 3 * samples.quarters[s]!
    const a = 3 * corners[t]!
    const b = 3 * corners[t + 1]!
    const c = 3 * corners[t + 2]!
    for (let k = 0; k < 3; k++) {
      quarters[at + k] = quarters[at + k]! + weights[t]! * colours[a + k]! + weights[t + 1]! * colours[b + k]! + weights[t + 2]! * colours[c + k]!
    }
  }
}

function addPoints(quarters: Float64Array, { ground, nets }: View, room: ComposeRoom, from: number, end: number): void {
  for (let p = from; p < end; p++) {
    const g = ground.pointGrounds[p]!
    const colours = room.nets[g]!
    const { n, m, right, below } = netPlace(nets[g]!, ground.pointX[p]!, ground.pointY[p]!)
    const at = 3 * ground.pointQuarters[p]!
    for (let k = 0; k < 3; k++) {
      const upper = colours[3 * n + k]! + right * (colours[3 * n + 3 + k]! - colours[3 * n + k]!)
      const lower = colours[3 * m + k]! + right * (colours[3 * m + 3 + k]! - colours[3 * m + k]!)
      quarters[at + k] = quarters[at + k]! + 0.25 * (upper + below * (lower - upper))
    }
  }
}

function addEyes(quarters: Float64Array, { samples: { eyes } }: View, lights: readonly LitLayer[], from: number, end: number): void {
  for (let e = from; e < end; e++) {
    const at = 3 * eyes.quarters[e]!
    for (const { layer, table: { sheen } } of lights) {
      const mirrored = 0.25 * layer.surface.eyes[e]!
      for (let k = 0; k < 3; k++) quarters[at + k] = quarters[at + k]! + mirrored * sheen[k]!
    }
  }
}
