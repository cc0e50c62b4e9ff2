import { memo } from 'react'
import type { Thing } from '../things.ts'
import { project, type ViewKind } from '../view/projection.ts'
import { pixelAt, type ViewTransform } from '../view/viewTransform.ts'
import { Circle, Group, Line } from './konva.ts'
import type { Palette } from './palette.ts'

interface PointShapeProps {
  readonly thing: Thing
  readonly view: ViewKind
  readonly transform: ViewTransform
  readonly palette: Palette
  readonly marked: boolean
}

/** A point that is metered: the meter's own dome, 4 px at any zoom, and the way it faces. */
export const PointShape = memo(function PointShape({ thing, view, transform, palette, marked }: PointShapeProps) {
  const [x, y] = pixelAt(transform, project(view, thing.place))
  const [u, v] = project(view, thing.axis)
  const stroke = marked ? palette.focus : palette.ink
  return (
    <Group listening={false}>
      <Line points={[x, y, x + u * 13, y + v * 13]} stroke={stroke} strokeWidth={1.5} listening={false} />
      <Circle x={x} y={y} radius={4.5} fill={palette.ink} stroke={palette.outside} strokeWidth={1.5} listening={false} />
    </Group>
  )
})
