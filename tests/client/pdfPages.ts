import { createCanvas } from '@napi-rs/canvas'
import { getDocument, Util } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { TextItem } from 'pdfjs-dist/types/src/display/api.js'

/** A run of text where it stands on the page, in points from the upper left corner. */
export interface FoundText {
  readonly text: string
  readonly left: number
  readonly right: number
  /** Of its letters about: from the baseline. */
  readonly top: number
  readonly bottom: number
}

export interface Pixels {
  readonly data: Uint8ClampedArray
  readonly width: number
  readonly height: number
}

export interface ReadPage {
  readonly width: number
  readonly height: number
  readonly texts: readonly FoundText[]
  render(pixelsPerPoint: number): Promise<Pixels>
  png(pixelsPerPoint: number): Promise<Buffer>
}

/** The pages of a PDF as another program reads and draws them (pdfjs-dist). */
export async function readPdf(pdf: Uint8Array): Promise<readonly ReadPage[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise
  return Promise.all(Array.from({ length: document.numPages }, async (_, i): Promise<ReadPage> => {
    const page = await document.getPage(i + 1)
    const viewport = page.getViewport({ scale: 1 })
    const { items } = await page.getTextContent()
    async function draw(pixelsPerPoint: number) {
      const scaled = page.getViewport({ scale: pixelsPerPoint })
      const canvas = createCanvas(Math.ceil(scaled.width), Math.ceil(scaled.height))
      const context = canvas.getContext('2d')
      // The canvas of Node stands in for the browser's, as pdfjs itself does in Node.
      await page.render({ canvas: canvas as never, canvasContext: context as never, viewport: scaled }).promise
      return { canvas, context }
    }
    return {
      width: viewport.width, height: viewport.height,
      texts: items.filter((item): item is TextItem => 'str' in item && item.str.trim() !== '').map(({ str, transform, width }) => {
        const [, , , size, x, y] = Util.transform(viewport.transform, transform) as [number, number, number, number, number, number]
        return { text: str, left: x, right: x + width, top: y - Math.abs(size) * 0.7, bottom: y }
      }),
      async render(pixelsPerPoint) {
        const { canvas, context } = await draw(pixelsPerPoint)
        return { data: context.getImageData(0, 0, canvas.width, canvas.height).data, width: canvas.width, height: canvas.height }
      },
      png: async (pixelsPerPoint) => (await draw(pixelsPerPoint)).canvas.toBuffer('image/png'),
    }
  }))
}

/** As a printer without colour lays it down: luminance of Rec. 709. */
export function inGrey({ data, width, height }: Pixels): Pixels {
  const grey = new Uint8ClampedArray(data.length)
  for (let i = 0; i < data.length; i += 4) {
    grey.fill(0.2126 * data[i]! + 0.7152 * data[i + 1]! + 0.0722 * data[i + 2]!, i, i + 3)
    grey[i + 3] = 255
  }
  return { data: grey, width, height }
}

/** One corner of a page: what is left of it when the rest is torn off. */
export function cornerOf({ data, width, height }: Pixels, [right, down]: readonly [0 | 1, 0 | 1], share = 0.25): Pixels {
  const [w, h] = [Math.floor(width * share), Math.floor(height * share)]
  const [x0, y0] = [right * (width - w), down * (height - h)]
  const part = new Uint8ClampedArray(w * h * 4)
  for (let y = 0; y < h; y++) part.set(data.subarray(((y0 + y) * width + x0) * 4, ((y0 + y) * width + x0 + w) * 4), y * w * 4)
  return { data: part, width: w, height: h }
}
