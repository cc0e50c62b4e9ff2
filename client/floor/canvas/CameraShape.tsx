import { memo } from 'react'
import type { Camera } from '../../../shared-core/plan/schema/look.ts'
import { coneCorners } from '../solids/cameraSolids.ts'
import { silhouette } from '../solids/solid.ts'
import type { Thing } from '../things.ts'
import { project, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import { convexHull } from '../solids/hull.ts'
import { Group } from './konva.ts'
import { Outline, Path } from './Outline.tsx'
import type { Palette } from './palette.ts'

interface CameraShapeProps {
  readonly thing: Thing
  readonly camera: Camera
  readonly view: ViewKind
  readonly palette: Palette
  /** Where the cone ends: the paper or the rear wall. */
  readonly reachMetres: number
  readonly marked: boolean
}

/** Camera and lens in true size, and the cone of what the Frame takes in, as far as the paper. */
export const CameraShape = memo(function CameraShape({ thing, camera, view, palette, reachMetres, marked }: CameraShapeProps) {
  const lens = project(view, thing.place)
  const corners = coneCorners(camera, reachMetres).map((corner) => project(view, corner))
  const frame = frameLines(camera, view)
  return (
    <Group listening={false}>
      <ConeLines lens={lens} corners={corners} view={view} palette={palette} />
      {frame !== null && <Path path={frame} stroke={palette.inkSoft} strokeWidth={1.5} />}
      {thing.solids.map((solid) => (
        <Outline key={solid.part} path={silhouette(solid, view)} fill={solid.part === 'lens' ? palette.line : palette.body} stroke={marked ? palette.focus : palette.inkSoft} strokeWidth={marked ? 1.75 : 1.25} />
      ))}
    </Group>
  )
})

interface ConeLinesProps {
  readonly lens: DrawnPoint
  readonly corners: readonly DrawnPoint[]
  readonly view: ViewKind
  readonly palette: Palette
}

function ConeLines({ lens, corners, view, palette }: ConeLinesProps) {
  if (view === 'camera') return <Outline path={convexHull(corners)} stroke={palette.inkFaint} strokeWidth={1} dash={[7, 6]} />
  const hull = convexHull([lens, ...corners])
  const at = hull.findIndex((point) => point[0] === lens[0] && point[1] === lens[1])
  if (at < 0 || hull.length < 3) return null
  const before = hull[(at + hull.length - 1) % hull.length]!
  const after = hull[(at + 1) % hull.length]!
  return (
    <>
      <Outline path={hull} fill={palette.ink} opacity={0.035} />
      <Path path={[lens, before]} stroke={palette.inkFaint} strokeWidth={1} dash={[7, 6]} />
      <Path path={[lens, after]} stroke={palette.inkFaint} strokeWidth={1} dash={[7, 6]} />
    </>
  )
}

/** The Frame's width (from above) or height (from the side) where the camera is focused, as a line across the cone. */
function frameLines(camera: Camera, view: ViewKind): DrawnPoint[] | null {
  if (view === 'camera') return null
  const corners = coneCorners(camera, camera.aim.yMetres).map((corner) => project(view, corner))
  const across = view === 'floor' ? [corners[0], corners[1]] : [corners[0], corners[3]]
  return across[0] !== undefined && across[1] !== undefined ? [across[0], across[1]] : null
}
