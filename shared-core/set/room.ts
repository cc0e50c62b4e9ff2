import type { Vector } from '../arithmetic/vector.ts'
import type { Panel } from './panels.ts'
import type { RoomSurfaceName, SceneBackdrop, SceneRoom } from './scene.ts'

/** The inside of the room in the set's own axes, in metres. */
export interface RoomBox {
  readonly left: number
  readonly right: number
  readonly rear: number
  readonly front: number
  readonly height: number
}

export function roomBox(room: SceneRoom): RoomBox {
  return {
    left: -room.markFromLeftWallMetres,
    right: room.widthMetres - room.markFromLeftWallMetres,
    rear: room.markFromRearWallMetres,
    front: room.markFromRearWallMetres - room.lengthMetres,
    height: room.heightMetres,
  }
}

/** Walls, ceiling and floor as panels that face into the room. */
export function roomPanels(box: RoomBox): readonly { readonly name: RoomSurfaceName; readonly panel: Panel }[] {
  const x = (box.left + box.right) / 2
  const y = (box.front + box.rear) / 2
  const z = box.height / 2
  const halfWidth = (box.right - box.left) / 2
  const halfLength = (box.rear - box.front) / 2
  const wall = (centre: Vector, across: Vector, normal: Vector, halfWidthMetres: number): Panel =>
    ({ centre, across, up: [0, 0, 1], normal, halfWidthMetres, halfHeightMetres: z })
  const level = (height: number, normal: Vector): Panel => ({
    centre: [x, y, height], across: [1, 0, 0], up: [0, 1, 0], normal, halfWidthMetres: halfWidth, halfHeightMetres: halfLength,
  })
  return [
    { name: 'leftWall', panel: wall([box.left, y, z], [0, 1, 0], [1, 0, 0], halfLength) },
    { name: 'rightWall', panel: wall([box.right, y, z], [0, 1, 0], [-1, 0, 0], halfLength) },
    { name: 'rearWall', panel: wall([x, box.rear, z], [1, 0, 0], [0, -1, 0], halfWidth) },
    { name: 'frontWall', panel: wall([x, box.front, z], [1, 0, 0], [0, 1, 0], halfWidth) },
    { name: 'ceiling', panel: level(box.height, [0, 0, -1]) },
    { name: 'floor', panel: level(0, [0, 0, 1]) },
  ]
}

/** How far the paper runs out over the floor towards the camera. Common practice for a sweep, no source. */
export const SWEEP_METRES = 1.2
/** Off the floor, so that the paper and not the floor under it is met. */
const PAPER_ON_FLOOR_METRES = 0.002

/** The part of the paper that lies on the floor, facing up. */
export function sweepPanel(backdrop: SceneBackdrop): Panel | null {
  if (backdrop.kind === 'none') return null
  return {
    centre: [backdrop.centreXMetres, backdrop.yMetres - SWEEP_METRES / 2, PAPER_ON_FLOOR_METRES],
    across: [1, 0, 0],
    up: [0, 1, 0],
    normal: [0, 0, 1],
    halfWidthMetres: backdrop.widthMetres / 2,
    halfHeightMetres: SWEEP_METRES / 2,
  }
}

/** The paper as it hangs: a panel from the floor to its top. */
export function paperPanel(backdrop: SceneBackdrop): Panel | null {
  if (backdrop.kind === 'none') return null
  const half = backdrop.topMetres / 2
  return {
    centre: [backdrop.centreXMetres, backdrop.yMetres, half],
    across: [1, 0, 0],
    up: [0, 0, 1],
    normal: [0, -1, 0],
    halfWidthMetres: backdrop.widthMetres / 2,
    halfHeightMetres: half,
  }
}
