import type { ComponentProps } from 'react'
import type { DrawnPoint } from '../view/projection.ts'
import { Line } from './konva.ts'

type LineProps = ComponentProps<typeof Line>

interface OutlineProps extends Omit<LineProps, 'points'> {
  readonly path: readonly DrawnPoint[]
}

/** A closed outline in metres whose lines keep their width in pixels at every zoom. */
export function Outline({ path, ...rest }: OutlineProps) {
  return <Line points={path.flat()} closed={path.length > 2} lineJoin="round" lineCap="round" strokeScaleEnabled={false} listening={false} perfectDrawEnabled={false} {...rest} />
}

/** An open run of lines in metres. */
export function Path({ path, ...rest }: OutlineProps) {
  return <Line points={path.flat()} lineJoin="round" lineCap="butt" strokeScaleEnabled={false} listening={false} perfectDrawEnabled={false} {...rest} />
}
