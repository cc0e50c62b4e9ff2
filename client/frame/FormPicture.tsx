import { useEffect, useMemo, useRef } from 'react'
import type { AreaPrediction, Framing } from '../../shared-core/predict/prediction.ts'
import { formWeights } from './formWeights.ts'
import { paintForm } from './paintForm.ts'

export interface FormPictureProps {
  readonly areas: readonly AreaPrediction[]
  readonly framing: Framing
  readonly statureMetres: number
  /** Display colours in the order of `areas`. */
  readonly colours: readonly string[]
  readonly widthPixels: number
  /** What the picture shows, for those who cannot see it. */
  readonly description: string
}

/** A plain head-neck-shoulders form over the background, each area's patch in the colour given for it. */
export function FormPicture({ areas, framing, statureMetres, colours, widthPixels, description }: FormPictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const heightPixels = Math.max(1, Math.round((widthPixels * framing.atSubjectHeightMetres) / framing.atSubjectWidthMetres))
  const places = placesKey(areas, framing, statureMetres)
  const form = useMemo(
    () => formWeights(areas, framing, statureMetres, widthPixels, heightPixels),
    // Areas are new with every prediction; only where they are matters here.
    // eslint-disable-next-line react-hooks/exhaustive-deps
    [places, widthPixels, heightPixels],
  )

  useEffect(() => {
    const context = canvas.current?.getContext('2d')
    if (!context) return
    const image = context.createImageData(form.widthPixels, form.heightPixels)
    paintForm(form, colours, image.data)
    context.putImageData(image, 0, 0)
  }, [form, colours])

  return <canvas ref={canvas} className="form-picture" width={widthPixels} height={heightPixels} role="img" aria-label={description} />
}

function placesKey(areas: readonly AreaPrediction[], framing: Framing, statureMetres: number): string {
  const places = areas.map((area) => `${area.id},${area.material},${area.frameX.toFixed(4)},${area.frameY.toFixed(4)},${area.facing.map((part) => part.toFixed(2)).join()}`)
  return `${statureMetres}|${framing.atSubjectWidthMetres.toFixed(4)}|${framing.atSubjectHeightMetres.toFixed(4)}|${places.join(' ')}`
}
