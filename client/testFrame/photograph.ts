import { largestEmbeddedJpeg } from '../../shared-core/testFrame/embeddedJpeg.ts'
import type { Bytes } from '../../shared-core/testFrame/sample.ts'

/** A photograph on this device: drawn, and as bytes to read. */
export interface Photograph {
  readonly name: string
  /** Whether it is the preview that a camera put inside its raw file. */
  readonly isPreview: boolean
  readonly canvas: HTMLCanvasElement
  readonly bytes: Bytes
}

/** More than this says nothing more of an area. */
const LONGEST_SIDE = 1800

/**
 * Reads a photograph a browser can show, or the largest preview inside a raw file. It stays on this device.
 * @throws Error with words for people
 */
export async function readPhotograph(file: File): Promise<Photograph> {
  const shown = await bitmapOf(file)
  if (shown !== null) return photographOf(shown, file.name, false)
  const bytes = new Uint8Array(await file.arrayBuffer())
  const inside = largestEmbeddedJpeg(bytes)
  const preview = inside === null ? null : await bitmapOf(new Blob([bytes.slice(inside.start, inside.end)], { type: 'image/jpeg' }))
  if (preview === null) throw new Error(`“${file.name}” is no picture this browser can show, and has no preview inside. Save it as JPEG, PNG or WebP.`)
  return photographOf(preview, file.name, true)
}

/** The same a quarter turn to the right: previews often lie on their side. */
export function turnedRight({ canvas, name, isPreview }: Photograph): Photograph {
  const turned = document.createElement('canvas')
  turned.width = canvas.height
  turned.height = canvas.width
  const pen = penOf(turned)
  pen.setTransform(0, 1, -1, 0, turned.width, 0)
  pen.drawImage(canvas, 0, 0)
  return { name, isPreview, canvas: turned, bytes: bytesOf(turned) }
}

async function bitmapOf(blob: Blob): Promise<ImageBitmap | null> {
  try {
    return await createImageBitmap(blob, { imageOrientation: 'from-image' })
  } catch {
    return null
  }
}

function photographOf(bitmap: ImageBitmap, name: string, isPreview: boolean): Photograph {
  const share = Math.min(1, LONGEST_SIDE / Math.max(bitmap.width, bitmap.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(bitmap.width * share))
  canvas.height = Math.max(1, Math.round(bitmap.height * share))
  const pen = penOf(canvas)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
  bitmap.close()
  return { name, isPreview, canvas, bytes: bytesOf(canvas) }
}

export function penOf(canvas: HTMLCanvasElement): CanvasRenderingContext2D {
  const pen = canvas.getContext('2d', { colorSpace: 'srgb', willReadFrequently: true })
  if (pen === null) throw new Error('This browser cannot draw pictures.')
  return pen
}

function bytesOf(canvas: HTMLCanvasElement): Bytes {
  const { width, height, data } = penOf(canvas).getImageData(0, 0, canvas.width, canvas.height)
  return { width, height, rgba: data }
}
