import { BOTH_OR_EDGE } from './pixelKinds.ts'
import type { View } from './view.ts'

/**
 * Pixels in which one thing ends and another begins: each is seen at four places, and here is where their samples are
 * found. Made once for a view.
 */
export interface EdgePixels {
  /** Ascending. */
  readonly pixels: Uint32Array
  /** Where each one's own begin among the surface's entries, the ground's points and the eyes' samples; last, where those end. */
  readonly entries: Uint32Array
  readonly points: Uint32Array
  readonly eyes: Uint32Array
}

export function edgePixels({ samples, ground }: Pick<View, 'samples' | 'ground'>): EdgePixels {
  const { kinds } = samples
  const found: number[] = []
  for (let pixel = 0, p = 0; pixel < kinds.length; pixel++) {
    let isEdge = kinds[pixel] === BOTH_OR_EDGE
    for (; p < ground.pointCount && ground.pointPixels[p] === pixel; p++) isEdge = true
    if (isEdge) found.push(pixel)
  }
  const pixels = Uint32Array.from(found)
  return {
    pixels,
    entries: firstsOf(pixels, samples.pixels, samples.count),
    points: firstsOf(pixels, ground.pointPixels, ground.pointCount),
    eyes: firstsOf(pixels, samples.eyes.pixels, samples.eyes.count),
  }
}

/** Where each pixel's own begin in an ascending list; a pixel that has none there begins where the next one does. */
function firstsOf(pixels: Uint32Array, list: Uint32Array, count: number): Uint32Array {
  const firsts = new Uint32Array(pixels.length + 1)
  let at = 0
  for (let i = 0; i < pixels.length; i++) {
    while (at < count && list[at]! < pixels[i]!) at++
    firsts[i] = at
  }
  firsts[pixels.length] = count
  return firsts
}
