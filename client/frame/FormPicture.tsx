import { useEffect, useMemo, useRef } from 'react'
import type { AreaPrediction, Framing } from '../../shared-core/predict/prediction.ts'
import { formWeights, type FormWeights } from './formWeights.ts'
import { linearFromHexes, paintForm } from './paintForm.ts'

export interface FormPictureProps {
  readonly areas: readonly AreaPrediction[]
  readonly framing: Framing
  readonly statureMetres: number
  /** Display colours in the order of `areas`. */
  readonly colours: readonly string[]
  readonly widthPixels: number
  /** What the picture shows, for those who cannot see it; empty beside words that already say it. */
  readonly description: string
  /** A new one fades to the new colours (a light lifted out, seen alone); the same one follows a hand at once. */
  readonly fadeKey?: string
}

/** Lights fade, so that the eye sees the change and nothing on the screen flashes. */
const FADE_MS = 150

/** A plain head-neck-shoulders form over the background, each area's patch in the colour given for it. */
export function FormPicture({ areas, framing, statureMetres, colours, widthPixels, description, fadeKey = '' }: FormPictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const shown = useRef<{ readonly linear: Float32Array; readonly fadeKey: string } | null>(null)
  const heightPixels = Math.max(1, Math.round((widthPixels * framing.atSubjectHeightMetres) / framing.atSubjectWidthMetres))
  const places = placesKey(areas, framing, statureMetres)
  const form = useMemo(
    () => rememberedForm(`${places} ${widthPixels}`, () => formWeights(areas, framing, statureMetres, widthPixels, heightPixels)),
    // Areas are new with every prediction; only where they are matters here.
    // eslint-disable-next-line react-hooks/exhaustive-deps
    [places, widthPixels, heightPixels],
  )

  useEffect(() => {
    const target = linearFromHexes(colours)
    const from = shown.current
    const paint = (linear: Float32Array) => {
      shown.current = { linear, fadeKey }
      paintOn(canvas.current, form, linear)
    }
    const fades = from !== null && from.fadeKey !== fadeKey && from.linear.length === target.length && !matchMedia('(prefers-reduced-motion: reduce)').matches
    if (!fades) return paint(target)
    return fade(from.linear, target, paint)
  }, [form, colours, fadeKey])

  return (
    <canvas
      ref={canvas}
      className="form-picture"
      width={widthPixels}
      height={heightPixels}
      {...(description === '' ? { 'aria-hidden': true } : { role: 'img', 'aria-label': description })}
    />
  )
}

/** All Singles are one form: it is made once for a size and a place of the camera. */
const forms = new Map<string, FormWeights>()
const FORMS_KEPT = 4

function rememberedForm(key: string, make: () => FormWeights): FormWeights {
  const form = forms.get(key) ?? make()
  forms.delete(key)
  forms.set(key, form)
  const [oldest] = forms.keys()
  if (forms.size > FORMS_KEPT && oldest !== undefined) forms.delete(oldest)
  return form
}

function paintOn(canvas: HTMLCanvasElement | null, form: FormWeights, linear: Float32Array): void {
  const context = canvas?.getContext('2d')
  if (!context) return
  const image = context.createImageData(form.widthPixels, form.heightPixels)
  paintForm(form, linear, image.data)
  context.putImageData(image, 0, 0)
}

/** Paints from one set of colours to another, in linear light; returns how to stop. */
function fade(from: Float32Array, to: Float32Array, paint: (linear: Float32Array) => void): () => void {
  const start = performance.now()
  let frame = requestAnimationFrame(function step(now: number) {
    const done = Math.min(1, Math.max(0, (now - start) / FADE_MS))
    paint(to.map((value, i) => value * done + (from[i] ?? 0) * (1 - done)))
    if (done < 1) frame = requestAnimationFrame(step)
  })
  return () => cancelAnimationFrame(frame)
}

function placesKey(areas: readonly AreaPrediction[], framing: Framing, statureMetres: number): string {
  const places = areas.map((area) => `${area.id},${area.material},${area.frameX.toFixed(4)},${area.frameY.toFixed(4)},${area.facing.map((part) => part.toFixed(2)).join()}`)
  return `${statureMetres}|${framing.atSubjectWidthMetres.toFixed(4)}|${framing.atSubjectHeightMetres.toFixed(4)}|${places.join(' ')}`
}
