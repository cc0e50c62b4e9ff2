/** Share of the stray light that stays near its source as a bloom; the rest veils the whole frame. Common practice, no source. */
const BLOOM_SHARE = 0.35
/** Cells of the coarse grid that the bloom is spread on, across the Frame's width. */
const COLUMNS = 24

/** Stray light of the lens on a coarse grid over the Frame: three channels a cell, to be drawn between their middles. */
export interface StrayLight {
  readonly columns: number
  readonly rows: number
  readonly levels: Float32Array
}

/**
 * The veil of a lens: a share of the frame's mean light everywhere, and a bloom around what is brightest. What is past
 * clip counts in full, because the lens scatters light before the sensor clips it.
 * @param linear three channels a pixel, before the clip
 * @param glare share of the mean that is spread
 */
export function strayLight(linear: Float32Array, width: number, height: number, glare: number): StrayLight {
  const columns = COLUMNS
  const rows = Math.max(2, Math.round((COLUMNS * height) / width))
  const cells = meansByCell(linear, width, height, columns, rows)
  const mean = [0, 0, 0]
  for (let at = 0; at < cells.length; at++) mean[at % 3] = mean[at % 3]! + cells[at]! / (columns * rows)
  const levels = blurred(cells, columns, rows)
  for (let at = 0; at < levels.length; at++) levels[at] = glare * ((1 - BLOOM_SHARE) * mean[at % 3]! + BLOOM_SHARE * levels[at]!)
  return { columns, rows, levels }
}

function meansByCell(linear: Float32Array, width: number, height: number, columns: number, rows: number): Float32Array {
  const cells = new Float32Array(3 * columns * rows)
  for (let j = 0; j < rows; j++) {
    const top = Math.floor((j * height) / rows)
    const bottom = Math.max(top + 1, Math.floor(((j + 1) * height) / rows))
    for (let i = 0; i < columns; i++) {
      const left = Math.floor((i * width) / columns)
      const right = Math.max(left + 1, Math.floor(((i + 1) * width) / columns))
      let red = 0
      let green = 0
      let blue = 0
      for (let y = top; y < bottom; y++) {
        for (let at = 3 * (y * width + left), end = 3 * (y * width + right); at < end; at += 3) {
          red += linear[at]!
          green += linear[at + 1]!
          blue += linear[at + 2]!
        }
      }
      const share = 1 / ((bottom - top) * (right - left))
      cells.set([red * share, green * share, blue * share], 3 * (j * columns + i))
    }
  }
  return cells
}

/** Three passes of a box in each direction come close to a Gaussian. */
function blurred(cells: Float32Array, columns: number, rows: number): Float32Array {
  let from = cells
  for (let pass = 0; pass < 3; pass++) {
    from = boxed(from, rows, columns, 3, 3 * columns)
    from = boxed(from, columns, rows, 3 * columns, 3)
  }
  return from
}

/** Each cell becomes the mean of five along a line, the last of the line counted again past its end. */
function boxed(from: Float32Array, lines: number, cells: number, step: number, nextLine: number): Float32Array {
  const to = new Float32Array(from.length)
  for (let line = 0; line < lines; line++) {
    for (let k = 0; k < 3; k++) {
      const first = line * nextLine + k
      const last = first + (cells - 1) * step
      let sum = 3 * from[first]! + from[Math.min(last, first + step)]! + from[Math.min(last, first + 2 * step)]!
      for (let at = first; at <= last; at += step) {
        to[at] = sum / 5
        sum += from[Math.min(last, at + 3 * step)]! - from[Math.max(first, at - 2 * step)]!
      }
    }
  }
  return to
}

/**
 * Stray light of the cells along one row of pixels: three channels a cell.
 * @param row room for three channels a column
 */
export function strayAlongRow({ columns, rows, levels }: StrayLight, y: number, height: number, row: Float64Array): void {
  const v = Math.min(rows - 1, Math.max(0, ((y + 0.5) * rows) / height - 0.5))
  const j = Math.min(rows - 2, v | 0)
  const below = v - j
  const line = 3 * j * columns
  const next = line + 3 * columns
  for (let at = 0; at < 3 * columns; at++) row[at] = levels[line + at]! + below * (levels[next + at]! - levels[line + at]!)
}
