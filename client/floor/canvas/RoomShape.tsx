import { memo } from 'react'
import type { Room } from '../../../shared-core/plan/schema/room.ts'
import { roomBox } from '../../../shared-core/set/room.ts'
import { project, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import { Group, Rect } from './konva.ts'
import { Outline, Path } from './Outline.tsx'
import type { Palette } from './palette.ts'

interface RoomShapeProps {
  readonly room: Room
  readonly view: ViewKind
  readonly palette: Palette
  readonly pixelsPerMetre: number
}

/** Wide enough to be seen as a wall; how thick it is nobody measures. */
const WALL_PIXELS = 7

/** Floor or section, a metre grid from the subject's T, the walls in their own colours, and columns. */
export const RoomShape = memo(function RoomShape({ room, view, palette, pixelsPerMetre }: RoomShapeProps) {
  const box = roomBox(room)
  const corners = {
    floor: [[box.left, box.front, 0], [box.right, box.rear, 0]],
    side: [[box.left, box.front, 0], [box.left, box.rear, box.height]],
    camera: [[box.left, box.rear, 0], [box.right, box.rear, box.height]],
  } as const
  const [near, far] = corners[view]
  const [left, bottom] = project(view, near)
  const [right, top] = project(view, far)
  const wall = WALL_PIXELS / pixelsPerMetre
  const { surfaces } = room
  const shades = {
    floor: [surfaces.leftWall, surfaces.rightWall, surfaces.rearWall, surfaces.frontWall],
    side: [surfaces.frontWall, surfaces.rearWall, surfaces.ceiling, surfaces.floor],
    camera: [surfaces.leftWall, surfaces.rightWall, surfaces.ceiling, surfaces.floor],
  } as const
  const [leftShade, rightShade, topShade, bottomShade] = shades[view]
  return (
    <Group listening={false}>
      <Rect x={left} y={top} width={right - left} height={bottom - top} fill={palette.floor} />
      <Grid left={left} right={right} top={top} bottom={bottom} palette={palette} />
      <Rect x={left - wall} y={top - wall} width={wall} height={bottom - top + 2 * wall} fill={leftShade} opacity={0.32} />
      <Rect x={right} y={top - wall} width={wall} height={bottom - top + 2 * wall} fill={rightShade} opacity={0.32} />
      <Rect x={left} y={top - wall} width={right - left} height={wall} fill={topShade} opacity={0.32} />
      <Rect x={left} y={bottom} width={right - left} height={wall} fill={bottomShade} opacity={0.32} />
      <Outline path={[[left, top], [right, top], [right, bottom], [left, bottom]]} stroke={palette.line} strokeWidth={1} />
      {Object.entries(room.columns).map(([id, column]) => (
        <ColumnShape key={id} column={column} height={room.heightMetres} view={view} palette={palette} />
      ))}
    </Group>
  )
})

interface GridProps {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly palette: Palette
}

function Grid({ left, right, top, bottom, palette }: GridProps) {
  const upright = wholeMetres(left, right)
  const level = wholeMetres(top, bottom)
  const stroke = palette.grid
  return (
    <>
      {upright.map((u) => <Path key={`u${u}`} path={[[u, top], [u, bottom]]} stroke={stroke} strokeWidth={u === 0 ? 1.5 : 1} />)}
      {level.map((v) => <Path key={`v${v}`} path={[[left, v], [right, v]]} stroke={stroke} strokeWidth={v === 0 ? 1.5 : 1} />)}
    </>
  )
}

/** At most a couple of hundred: a hall of 30 m has 30. */
function wholeMetres(from: number, to: number): number[] {
  const first = Math.ceil(from)
  return Array.from({ length: Math.max(0, Math.floor(to) - first + 1) }, (_, i) => first + i)
}

interface ColumnShapeProps {
  readonly column: Room['columns'][string]
  readonly height: number
  readonly view: ViewKind
  readonly palette: Palette
}

function ColumnShape({ column, height, view, palette }: ColumnShapeProps) {
  const halfWidth = column.widthMetres / 2
  const halfDepth = column.depthMetres / 2
  const [u1, v1] = project(view, [column.xMetres - halfWidth, column.yMetres - halfDepth, 0])
  const [u2, v2] = project(view, [column.xMetres + halfWidth, column.yMetres + halfDepth, height])
  const path: DrawnPoint[] = [[u1, v1], [u2, v1], [u2, v2], [u1, v2]]
  return <Outline path={path} fill={palette.outside} stroke={palette.line} strokeWidth={1.5} />
}
