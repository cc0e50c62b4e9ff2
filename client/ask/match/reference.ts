import { middleOfSquare } from '../../../shared-core/picture/middleOfSquare.ts'

/** A picture of somebody's own, read here and sent nowhere. */
export interface Reference {
  readonly name: string
  readonly pixels: ImageData
}

/** As large as an eye-dropper needs; larger pictures are made smaller. */
const LONGEST_PIXELS = 900
/** Half the side of the eye-dropper's square, of the picture's longer side: a light's edge on a cheek stays out of it. */
const REACH_SHARE = 1 / 300

/** Decodes a picture file in this browser. Throws an Error with words when it cannot be read. */
export async function readReference(file: File): Promise<Reference> {
  let bitmap: ImageBitmap
  try {
    bitmap = await createImageBitmap(file)
  } catch {
    throw new Error(`“${file.name}” is no picture that this browser can read. JPEG, PNG and WebP always go.`)
  }
  const scale = Math.min(1, LONGEST_PIXELS / Math.max(bitmap.width, bitmap.height))
  const [width, height] = [Math.max(1, Math.round(bitmap.width * scale)), Math.max(1, Math.round(bitmap.height * scale))]
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true })
  if (context === null) throw new Error('This browser cannot read pictures here.')
  context.drawImage(bitmap, 0, 0, width, height)
  bitmap.close()
  return { name: file.name, pixels: context.getImageData(0, 0, width, height) }
}

/** The colour under the eye-dropper as `#rrggbb`. @param x,y 0-1 from the left and the top */
export function sampleReference({ pixels }: Reference, x: number, y: number): string {
  const { width, height, data } = pixels
  const at = (share: number, size: number): number => Math.min(size - 1, Math.max(0, Math.floor(share * size)))
  const reach = Math.max(1, Math.round(Math.max(width, height) * REACH_SHARE))
  const colour = middleOfSquare({ width, height, values: data, stride: 4 }, at(x, width), at(y, height), reach)
  return `#${colour.map((value) => Math.round(value).toString(16).padStart(2, '0')).join('')}`
}
