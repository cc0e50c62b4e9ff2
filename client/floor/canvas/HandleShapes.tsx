import { memo } from 'react'
import { handlesOf } from '../gestures/handles.ts'
import type { Thing } from '../things.ts'
import { project, type ViewKind } from '../view/projection.ts'
import { pixelAt, type ViewTransform } from '../view/viewTransform.ts'
import { Circle, Group, Line } from './konva.ts'
import type { Palette } from './palette.ts'

interface HandleShapesProps {
  readonly thing: Thing
  readonly view: ViewKind
  readonly transform: ViewTransform
  readonly palette: Palette
  readonly mayEdit: boolean
}

/** What can be held of the selected thing: its aim (a ring with a cross), its turn (a knob on a stem), the paper's top. */
export const HandleShapes = memo(function HandleShapes({ thing, view, transform, palette, mayEdit }: HandleShapesProps) {
  const middle = pixelAt(transform, project(view, thing.place))
  return (
    <Group listening={false} opacity={mayEdit ? 1 : 0.45}>
      {handlesOf(thing, view, transform).map(({ kind, at: [x, y] }) =>
        kind === 'aim' ? (
          <Group key={kind} listening={false}>
            <Line points={[middle[0], middle[1], x, y]} stroke={palette.focus} strokeWidth={1} dash={[3, 4]} opacity={0.75} listening={false} />
            <Circle x={x} y={y} radius={8} stroke={palette.outside} strokeWidth={4} opacity={0.6} listening={false} />
            <Circle x={x} y={y} radius={8} stroke={palette.focus} strokeWidth={1.75} listening={false} />
            <Line points={[x - 12, y, x - 4, y]} stroke={palette.focus} strokeWidth={1.5} listening={false} />
            <Line points={[x + 4, y, x + 12, y]} stroke={palette.focus} strokeWidth={1.5} listening={false} />
            <Line points={[x, y - 12, x, y - 4]} stroke={palette.focus} strokeWidth={1.5} listening={false} />
            <Line points={[x, y + 4, x, y + 12]} stroke={palette.focus} strokeWidth={1.5} listening={false} />
          </Group>
        ) : (
          <Group key={kind} listening={false}>
            {kind === 'turn' && <Line points={[middle[0], middle[1], x, y]} stroke={palette.focus} strokeWidth={1} opacity={0.75} listening={false} />}
            <Circle x={x} y={y} radius={6.5} fill={palette.focus} stroke={palette.outside} strokeWidth={2} listening={false} />
          </Group>
        ),
      )}
    </Group>
  )
})
