import type Konva from 'konva'
import { memo, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react'
import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Modifier } from '../../../shared-core/plan/schema/kit.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import type { Obstacles } from '../throw/obstacles.ts'
import { throwPicture, type ThrowPicture } from '../throw/paintThrow.ts'
import { throwAt, throwSource } from '../throw/throwField.ts'
import { useThrowField, type Throw, type ThrowPlanes } from '../throw/useThrowField.ts'
import { Image } from './konva.ts'

interface ThrowImageProps {
  readonly id: string
  readonly light: Light
  readonly modifier: Modifier
  readonly planes: ThrowPlanes
  /** Something is in a hand. */
  readonly inMotion: boolean
  readonly obstacles: Obstacles
  /** The place the light serves. */
  readonly served: Vector
  readonly levelStops: number | null
  readonly colour: string
  readonly shown: boolean
}

const FADE_SECONDS = 0.15

/** One light's throw over the plane in view, in its gel's colour; fades in and out, never jumps. */
export const ThrowImage = memo(function ThrowImage(props: ThrowImageProps) {
  const { id, light, modifier, planes, inMotion, obstacles, served, levelStops, colour, shown } = props
  const { place, aim, rollDegrees, grid } = light
  // By value: a new prediction brings the same place as a new array.
  const [servedX, servedY, servedZ] = served
  // A light that is off costs nothing while it is moved about; its last throw fades out where it was.
  const thrown = useMemo((): Throw | null => {
    if (!shown) return null
    const source = throwSource(id, { place, aim, rollDegrees, grid }, modifier)
    return { source, obstacles, reference: throwAt(source, [servedX, servedY, servedZ], null) }
  }, [shown, id, place, aim, rollDegrees, grid, modifier, obstacles, servedX, servedY, servedZ])
  const field = useThrowField(thrown, planes, inMotion)
  const picture = useMemo(
    () => (field === null ? null : throwPicture(field.stops, field.plane.columns, field.plane.rows, colour, levelStops)),
    [field, colour, levelStops],
  )

  const node = useRef<Konva.Image>(null)
  const [canvas] = useState(() => document.createElement('canvas'))
  useLayoutEffect(() => {
    if (picture === null) return
    paintOn(canvas, picture)
    node.current?.getLayer()?.batchDraw()
  }, [canvas, picture])
  useEffect(() => {
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches
    node.current?.to({ opacity: shown ? 1 : 0, duration: still ? 0 : FADE_SECONDS })
  }, [shown])

  const { left, top, right, bottom } = planes.fine.bounds
  return (
    <Image
      ref={node}
      image={canvas}
      x={left}
      y={top}
      width={right - left}
      height={bottom - top}
      opacity={0}
      globalCompositeOperation="screen"
      listening={false}
    />
  )
})

/** One canvas for the life of a light: a new one for every move would be thrown away sixty times a second. */
function paintOn(canvas: HTMLCanvasElement, { columns, rows, rgba }: ThrowPicture): void {
  if (canvas.width !== columns) canvas.width = columns
  if (canvas.height !== rows) canvas.height = rows
  canvas.getContext('2d')?.putImageData(new ImageData(rgba, columns, rows), 0, 0)
}
