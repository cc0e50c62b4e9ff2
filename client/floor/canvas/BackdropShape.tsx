import { memo } from 'react'
import type { Backdrop } from '../../../shared-core/plan/schema/look.ts'
import { SWEEP_METRES } from '../../../shared-core/set/room.ts'
import { backdropCorners } from '../solids/backdropCorners.ts'
import { project, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import { Group, Line } from './konva.ts'
import { Outline, Path } from './Outline.tsx'
import type { Palette } from './palette.ts'

interface BackdropShapeProps {
  readonly backdrop: Backdrop
  readonly view: ViewKind
  readonly palette: Palette
  readonly marked: boolean
}

/** Where paper turns from its hang to the floor; common practice, no source. */
const CURVE_METRES = 0.35
const ROLL_RADIUS_METRES = 0.05

/** The paper: its roll, its hang, and the sweep forward over the floor. */
export const BackdropShape = memo(function BackdropShape({ backdrop, view, palette, marked }: BackdropShapeProps) {
  if (backdrop.kind === 'none') return null
  const edge = marked ? palette.focus : palette.inkSoft
  if (view === 'side') return <FromTheSide backdrop={backdrop} edge={edge} />
  const corners = backdropCorners(backdrop).map((corner) => project(view, corner))
  if (view === 'camera') return <Outline path={corners} fill={backdrop.swatch} opacity={0.5} stroke={edge} strokeWidth={1} />
  const [left, right] = [corners[0]!, corners[1]!]
  return (
    <Group listening={false}>
      <Line
        points={[left[0], left[1], right[0], right[1], right[0], right[1] + SWEEP_METRES, left[0], left[1] + SWEEP_METRES]}
        closed
        listening={false}
        fillLinearGradientStartPoint={{ x: 0, y: left[1] }}
        fillLinearGradientEndPoint={{ x: 0, y: left[1] + SWEEP_METRES }}
        fillLinearGradientColorStops={[0, `${backdrop.swatch}66`, 0.45, `${backdrop.swatch}38`, 1, `${backdrop.swatch}22`]}
      />
      <Path path={[[left[0], left[1] + SWEEP_METRES], [right[0], right[1] + SWEEP_METRES]]} stroke={palette.line} strokeWidth={1} dash={[2, 4]} />
      <Line points={[left[0] - 0.08, left[1], right[0] + 0.08, right[1]]} stroke={palette.line} strokeWidth={0.03} listening={false} />
      <Line points={[left[0], left[1], right[0], right[1]]} stroke={edge} strokeWidth={ROLL_RADIUS_METRES * 2 + 0.02} listening={false} />
      <Line points={[left[0], left[1], right[0], right[1]]} stroke={backdrop.swatch} strokeWidth={ROLL_RADIUS_METRES * 2 - 0.01} listening={false} />
    </Group>
  )
})

function FromTheSide({ backdrop, edge }: { readonly backdrop: Backdrop; readonly edge: string }) {
  const y = backdrop.yMetres
  const curve: DrawnPoint[] = Array.from({ length: 9 }, (_, i) => {
    const angle = (i * Math.PI) / 16
    return [y - CURVE_METRES * (1 - Math.cos(angle)), -CURVE_METRES * (1 - Math.sin(angle))]
  })
  return (
    <Group listening={false}>
      <Path path={[[y, -backdrop.topMetres], ...curve, [y - SWEEP_METRES, 0]]} stroke={edge} strokeWidth={4} />
      <Path path={[[y, -backdrop.topMetres], ...curve, [y - SWEEP_METRES, 0]]} stroke={backdrop.swatch} strokeWidth={2.5} />
      <Outline path={circle(y + ROLL_RADIUS_METRES, -backdrop.topMetres, ROLL_RADIUS_METRES)} fill={backdrop.swatch} stroke={edge} strokeWidth={1} />
    </Group>
  )
}

function circle(u: number, v: number, radius: number): DrawnPoint[] {
  return Array.from({ length: 16 }, (_, i) => [u + radius * Math.cos((i * Math.PI) / 8), v + radius * Math.sin((i * Math.PI) / 8)])
}
