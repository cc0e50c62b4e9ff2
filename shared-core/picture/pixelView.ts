import type { View } from './view.ts'

/**
 * The same view with nothing of it but one pixel's samples: what is summed for it comes out as in the whole picture.
 * Eyes stay, all of them, for they are few and light is kept by their number.
 * @param x,y a pixel inside the view
 */
export function pixelView(view: View, x: number, y: number): View {
  const { samples, ground, width } = view
  const pixel = y * width + x
  const [from, end] = stretchOf(samples.pixels, samples.count, pixel)
  const [firstPoint, endPoint] = stretchOf(ground.pointPixels, ground.pointCount, pixel)
  const slots: number[] = []
  const materials: number[] = []
  const corners = samples.corners.slice(3 * from, 3 * end)
  for (let i = 0; i < corners.length; i++) {
    slots.push(samples.cornerSlots[corners[i]!]!)
    materials.push(samples.cornerMaterials[corners[i]!]!)
    corners[i] = i
  }
  const run = runWith(ground.runs, x, y)
  return {
    ...view,
    samples: {
      ...samples,
      count: end - from,
      pixels: samples.pixels.subarray(from, end),
      corners,
      weights: samples.weights.subarray(3 * from, 3 * end),
      quarters: samples.quarters.subarray(from, end),
      cornerCount: corners.length,
      cornerSlots: Uint32Array.from(slots),
      cornerMaterials: Uint8Array.from(materials),
    },
    ground: {
      ...ground,
      runs: run < 0 ? new Int32Array(0) : Int32Array.of(ground.runs[run]!, y, x, x + 1),
      pointCount: endPoint - firstPoint,
      pointPixels: ground.pointPixels.subarray(firstPoint, endPoint),
      pointQuarters: ground.pointQuarters.subarray(firstPoint, endPoint),
      pointGrounds: ground.pointGrounds.subarray(firstPoint, endPoint),
      pointX: ground.pointX.subarray(firstPoint, endPoint),
      pointY: ground.pointY.subarray(firstPoint, endPoint),
    },
  }
}

/** Where a pixel's entries begin and end in an ascending list. */
function stretchOf(pixels: Uint32Array, count: number, pixel: number): readonly [from: number, end: number] {
  let [low, high] = [0, count]
  while (low < high) {
    const middle = (low + high) >> 1
    if (pixels[middle]! < pixel) low = middle + 1
    else high = middle
  }
  let end = low
  while (end < count && pixels[end] === pixel) end++
  return [low, end]
}

/** Where the run that holds a pixel begins; -1 where none does. */
function runWith(runs: Int32Array, x: number, y: number): number {
  for (let r = 0; r < runs.length; r += 4) {
    if (runs[r + 1] === y && runs[r + 2]! <= x && x < runs[r + 3]!) return r
  }
  return -1
}
