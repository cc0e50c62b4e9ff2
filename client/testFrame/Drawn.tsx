import { useEffect, useRef } from 'react'
import type { Alignment } from '../../shared-core/testFrame/align.ts'
import type { Bytes } from '../../shared-core/testFrame/sample.ts'
import { penOf, type Photograph } from './photograph.ts'

/** The predicted Frame. */
export function Predicted({ picture }: { readonly picture: Bytes }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const { width, height, rgba } = picture
    if (canvas.current) penOf(canvas.current).putImageData(new ImageData(new Uint8ClampedArray(rgba), width, height), 0, 0)
  }, [picture])
  return <canvas ref={canvas} width={picture.width} height={picture.height} role="img" aria-label="The predicted Frame" />
}

/** The photograph as it lies on the Frame: the same crop and size, turned upright. */
export function LaidOn({ photo, alignment, width, height }: { readonly photo: Photograph; readonly alignment: Alignment; readonly width: number; readonly height: number }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    if (!canvas.current) return
    const pen = penOf(canvas.current)
    const [corner, right, below] = [alignment.toPhoto(0, 0), alignment.toPhoto(1, 0), alignment.toPhoto(0, 1)]
    const [ux, uy, vx, vy] = [right.x - corner.x, right.y - corner.y, below.x - corner.x, below.y - corner.y]
    const area = ux * vy - uy * vx
    const [a, c] = [(width * vy) / area, (-width * vx) / area]
    const [b, d] = [(-height * uy) / area, (height * ux) / area]
    pen.setTransform(1, 0, 0, 1, 0, 0)
    pen.clearRect(0, 0, width, height)
    pen.imageSmoothingQuality = 'high'
    pen.setTransform(a, b, c, d, -a * corner.x - c * corner.y, -b * corner.x - d * corner.y)
    pen.drawImage(photo.canvas, 0, 0)
  }, [photo, alignment, width, height])
  return <canvas ref={canvas} width={width} height={height} role="img" aria-label="The photograph, laid on the Frame" />
}
