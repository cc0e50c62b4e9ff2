import type Konva from 'konva'
import { memo, useEffect, useMemo, useRef } from 'react'
import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Modifier } from '../../../shared-core/plan/schema/kit.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import type { Obstacles } from '../throw/obstacles.ts'
import { paintThrow } from '../throw/paintThrow.ts'
import { throwAt, throwField, throwSource } from '../throw/throwField.ts'
import type { ThrowPlane } from '../throw/throwPlane.ts'
import { Image } from './konva.ts'

interface ThrowImageProps {
  readonly id: string
  readonly light: Light
  readonly modifier: Modifier
  readonly plane: ThrowPlane
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
  const { id, light, modifier, plane, obstacles, served, levelStops, colour, shown } = props
  const { place, aim, rollDegrees, grid } = light
  const field = useMemo(() => {
    const source = throwSource(id, { place, aim, rollDegrees, grid }, modifier)
    return throwField(source, plane, obstacles, throwAt(source, served, null))
  }, [id, place, aim, rollDegrees, grid, modifier, plane, obstacles, served])
  const picture = useMemo(
    () => paintThrow(field, plane.columns, plane.rows, colour, levelStops),
    [field, plane, colour, levelStops],
  )
  const node = useRef<Konva.Image>(null)
  useEffect(() => {
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches
    node.current?.to({ opacity: shown ? 1 : 0, duration: still ? 0 : FADE_SECONDS })
  }, [shown])
  const { bounds } = plane
  return (
    <Image
      ref={node}
      image={picture}
      x={bounds.left}
      y={bounds.top}
      width={bounds.right - bounds.left}
      height={bounds.bottom - bounds.top}
      opacity={0}
      globalCompositeOperation="screen"
      listening={false}
    />
  )
})
