import { strengthAt } from './throwField.ts'

/** Strong enough to colour the floor, weak enough to leave tapes and outlines readable where several meet. */
const STRONGEST_ALPHA = 0.48

/**
 * A field of stops as a picture of one colour whose opacity follows the level: bright near the front, gone where it no
 * longer matters.
 * @param levelStops the light's level at the place it serves, relative to the aperture; null when nothing arrives
 */
export function paintThrow(field: Float32Array, columns: number, rows: number, colour: string, levelStops: number | null): HTMLCanvasElement {
  const canvas = document.createElement('canvas')
  canvas.width = columns
  canvas.height = rows
  const context = canvas.getContext('2d')
  if (context === null || levelStops === null) return canvas
  const picture = context.createImageData(columns, rows)
  const [red, green, blue] = channelsOf(colour)
  for (let i = 0; i < field.length; i++) {
    const alpha = strengthAt((field[i] ?? -20) + levelStops) * STRONGEST_ALPHA * 255
    picture.data[i * 4] = red
    picture.data[i * 4 + 1] = green
    picture.data[i * 4 + 2] = blue
    picture.data[i * 4 + 3] = alpha + grain(i)
  }
  context.putImageData(picture, 0, 0)
  return canvas
}

/** Half a step up or down, fixed for each cell, so that long slow fades do not show as bands. */
function grain(i: number): number {
  return (((i * 2654435761) >>> 8) % 256) / 256 - 0.5
}

function channelsOf(colour: string): [number, number, number] {
  const value = Number.parseInt(colour.slice(1), 16)
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255]
}
