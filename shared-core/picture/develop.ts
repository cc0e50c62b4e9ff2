import { cameraMatrix } from '../colour/cameraMatrix.ts'
import { intoGamut } from '../colour/display.ts'
import { finishChannel, type Finish } from '../colour/finish.ts'
import { multiplyMatrices, type Matrix3 } from '../colour/matrix.ts'
import { encodedFromLinear, linearFromXyz } from '../spectra/srgb.ts'
import type { LinearSrgb } from '../colour/triples.ts'

export interface Development {
  readonly whiteBalanceKelvin: number
  /** Share of the frame's mean light that the lens spreads over everything. */
  readonly veilingGlare: number
  readonly finish: Finish
}

/** Share of the stray light that stays near its source as a bloom; the rest veils the whole frame. */
const BLOOM_SHARE = 0.35
/** Cells of the coarse net that the bloom is spread on, across the Frame's width. */
const BLOOM_CELLS = 24

/**
 * From linear camera channels to what a display shows: stray light of the lens, clip by channel, colour matrix, finish,
 * gamut, encoding. In this order, since each would come out wrong before the one it follows.
 * @param linear three channels a pixel, before the clip
 * @param into four bytes a pixel, sRGB
 */
export function develop(linear: Float32Array, width: number, height: number, how: Development, into: Uint8ClampedArray): void {
  const stray = strayLight(linear, width, height, how.veilingGlare)
  const matrix = toLinearSrgb(how.whiteBalanceKelvin)
  const finish = finishTable(how.finish)
  const [m0, m1, m2] = matrix
  for (let y = 0; y < height; y++) {
    const row = Math.min(stray.rows - 1, (y * stray.rows) / height)
    const j = Math.min(stray.rows - 2, Math.floor(row))
    const v = row - j
    for (let x = 0; x < width; x++) {
      const column = Math.min(stray.columns - 1, (x * stray.columns) / width)
      const i = Math.min(stray.columns - 2, Math.floor(column))
      const u = column - i
      const at = 3 * (y * width + x)
      const cell = 3 * (j * stray.columns + i)
      const below = cell + 3 * stray.columns
      let r = Math.min(1, linear[at]! + between(stray.levels, cell, below, u, v))
      let g = Math.min(1, linear[at + 1]! + between(stray.levels, cell + 1, below + 1, u, v))
      let b = Math.min(1, linear[at + 2]! + between(stray.levels, cell + 2, below + 2, u, v))
      const lr = m0[0] * r + m0[1] * g + m0[2] * b
      const lg = m1[0] * r + m1[1] * g + m1[2] * b
      const lb = m2[0] * r + m2[1] * g + m2[2] * b
      r = finish === null ? lr : finished(finish, lr)
      g = finish === null ? lg : finished(finish, lg)
      b = finish === null ? lb : finished(finish, lb)
      if (r < 0 || g < 0 || b < 0) [r, g, b] = intoGamut([r, g, b])
      const out = 4 * (y * width + x)
      into[out] = encoded(r)
      into[out + 1] = encoded(g)
      into[out + 2] = encoded(b)
      into[out + 3] = 255
    }
  }
}

/** Camera channels straight to linear sRGB, for one white balance. */
function toLinearSrgb(whiteBalanceKelvin: number): Matrix3 {
  const fromXyz = [linearFromXyz([1, 0, 0]), linearFromXyz([0, 1, 0]), linearFromXyz([0, 0, 1])] as const
  const columns = fromXyz.map((column) => column as LinearSrgb)
  const xyzToLinear: Matrix3 = [0, 1, 2].map((k) => [columns[0]![k]!, columns[1]![k]!, columns[2]![k]!]) as unknown as Matrix3
  return multiplyMatrices(xyzToLinear, cameraMatrix(whiteBalanceKelvin))
}

interface Stray {
  readonly columns: number
  readonly rows: number
  readonly levels: Float32Array
}

/** The veil: the frame's mean everywhere, and a bloom around what is brightest. What is past clip counts in full. */
function strayLight(linear: Float32Array, width: number, height: number, glare: number): Stray {
  const columns = BLOOM_CELLS
  const rows = Math.max(2, Math.round((BLOOM_CELLS * height) / width))
  const cells = new Float32Array(3 * columns * rows)
  const counts = new Float32Array(columns * rows)
  const mean = [0, 0, 0]
  for (let y = 0; y < height; y++) {
    const j = Math.min(rows - 1, Math.floor((y * rows) / height))
    for (let x = 0; x < width; x++) {
      const cell = j * columns + Math.min(columns - 1, Math.floor((x * columns) / width))
      const at = 3 * (y * width + x)
      cells[3 * cell] = cells[3 * cell]! + linear[at]!
      cells[3 * cell + 1] = cells[3 * cell + 1]! + linear[at + 1]!
      cells[3 * cell + 2] = cells[3 * cell + 2]! + linear[at + 2]!
      counts[cell] = counts[cell]! + 1
    }
  }
  for (let cell = 0; cell < counts.length; cell++) {
    for (let k = 0; k < 3; k++) {
      cells[3 * cell + k] = cells[3 * cell + k]! / Math.max(1, counts[cell]!)
      mean[k] = mean[k]! + cells[3 * cell + k]! / counts.length
    }
  }
  const bloom = blurred(cells, columns, rows)
  return { columns, rows, levels: bloom.map((value, at) => glare * ((1 - BLOOM_SHARE) * mean[at % 3]! + BLOOM_SHARE * value)) }
}

/** Three passes of a box in each direction come close to a Gaussian. */
function blurred(cells: Float32Array, columns: number, rows: number): Float32Array {
  let from = cells
  for (let pass = 0; pass < 3; pass++) {
    for (const [stepX, stepY] of [[1, 0], [0, 1]] as const) {
      const to = new Float32Array(from.length)
      for (let j = 0; j < rows; j++) {
        for (let i = 0; i < columns; i++) {
          for (let k = 0; k < 3; k++) {
            let sum = 0
            for (let n = -2; n <= 2; n++) {
              const x = Math.min(columns - 1, Math.max(0, i + n * stepX))
              const y = Math.min(rows - 1, Math.max(0, j + n * stepY))
              sum += from[3 * (y * columns + x) + k]!
            }
            to[3 * (j * columns + i) + k] = sum / 5
          }
        }
      }
      from = to
    }
  }
  return from
}

function between(values: Float32Array, above: number, below: number, u: number, v: number): number {
  const top = values[above]! + u * (values[above + 3]! - values[above]!)
  const bottom = values[below]! + u * (values[below + 3]! - values[below]!)
  return top + v * (bottom - top)
}

const FINISH_STEPS = 2048

/** The finish as a table over 0-1, or null when there is none: outside that range it leaves values alone. */
function finishTable(finish: Finish): Float64Array | null {
  if (finish.exposureStops === 0 && finish.contrast === 0 && finish.whitePointStops === 0 && finish.blackPoint === 0) return null
  return Float64Array.from({ length: FINISH_STEPS + 2 }, (_, i) => finishChannel(squared(Math.min(1, i / FINISH_STEPS)), finish))
}

const squared = (value: number): number => value * value

function finished(table: Float64Array, value: number): number {
  if (value <= 0 || value >= 1) return value <= 0 ? Math.min(value, table[0]!) : Math.max(table[FINISH_STEPS]!, Math.min(value, 1))
  const at = Math.sqrt(value) * FINISH_STEPS
  const i = at | 0
  return table[i]! + (table[i + 1]! - table[i]!) * (at - i)
}

const ENCODE_STEPS = 4096
/** sRGB codes by the square root of linear light, fine enough that no code is missed in the dark. */
const codes = Uint8Array.from({ length: ENCODE_STEPS + 1 }, (_, i) => Math.round(255 * encodedFromLinear(squared(i / ENCODE_STEPS))))

function encoded(value: number): number {
  if (value <= 0) return 0
  if (value >= 1) return 255
  return codes[Math.round(Math.sqrt(value) * ENCODE_STEPS)]!
}

