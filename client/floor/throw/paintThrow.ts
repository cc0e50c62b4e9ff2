import { strengthAt } from './throwField.ts'

/** Strong enough to colour the floor, weak enough to leave tapes and outlines readable where several meet. */
const STRONGEST_ALPHA = 0.48

/** A throw as opacities of one colour, cell by cell. */
export interface ThrowPicture {
  readonly columns: number
  readonly rows: number
  /** Red, green, blue, opacity, each 0 to 255. */
  readonly rgba: Uint8ClampedArray<ArrayBuffer>
}

/**
 * A field of stops as a picture of one colour whose opacity follows the level: bright near the front, gone where it no
 * longer matters.
 * @param levelStops the light's level at the place it serves, relative to the aperture; null when nothing arrives
 * @param colour `#rrggbb`
 */
export function throwPicture(field: Float32Array, columns: number, rows: number, colour: string, levelStops: number | null): ThrowPicture {
  const rgba = new Uint8ClampedArray(columns * rows * 4)
  if (levelStops === null) return { columns, rows, rgba }
  const [red, green, blue] = channelsOf(colour)
  for (let i = 0; i < field.length; i++) {
    const strength = strengthAt((field[i] ?? -20) + levelStops)
    rgba[i * 4] = red
    rgba[i * 4 + 1] = green
    rgba[i * 4 + 2] = blue
    rgba[i * 4 + 3] = strength === 0 ? 0 : strength * STRONGEST_ALPHA * 255 + grain(i)
  }
  return { columns, rows, rgba }
}

/** Half a step up or down, fixed for each cell, so that long slow fades do not show as bands. */
function grain(i: number): number {
  return ((Math.imul(i, 2654435761) >>> 8) % 256) / 256 - 0.5
}

function channelsOf(colour: string): [number, number, number] {
  const value = Number.parseInt(colour.slice(1), 16)
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255]
}
