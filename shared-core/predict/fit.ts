import { distance, type Vector } from '../arithmetic/vector.ts'
import { behindAt, type Behind } from '../set/behind.ts'
import { builtSet } from '../set/builtSet.ts'
import { framePositionOf, isInFrame } from '../set/camera.ts'
import { lightBody } from '../set/lightBody.ts'
import { Occluders } from '../set/occluders.ts'
import { panelCorners, panelsOf } from '../set/panels.ts'
import { roomBox, type RoomBox } from '../set/room.ts'
import type { Scene } from '../set/scene.ts'
import { lightAtPoint } from '../transport/lightAtPoint.ts'

/** Keep this under the ceiling; nothing within this share of the frame's edge. Common practice, no source. */
const CEILING_CLEAR_METRES = 0.1
const FRAME_MARGIN = 0.05
/** A corner that rests on floor or wall is fine. */
const TOUCHING_METRES = 0.005
const POINT_METRES = 0.001

export type RoomSide = 'left' | 'right' | 'rear' | 'front' | 'ceiling' | 'floor'

/** How one light or piece fits: into the room, and out of the picture. */
export interface ThingFit {
  readonly id: string
  /** How far its farthest corner reaches past a side of the room; null when it fits. */
  readonly past: { readonly side: RoomSide; readonly metres: number } | null
  /** Corners that the camera sees in the widened frame; 0 for what is itself the background. */
  readonly seenCorners: number
  /** Points of the stand under it that the camera sees; a light on a boom has none there. */
  readonly seenStand: number
}

/** What geometry alone says of a set's fit. */
export interface Fit {
  readonly things: readonly ThingFit[]
  /** By light id: lux-seconds on the lens for each lumen-second of the tube, for lights that are not the background. */
  readonly atLens: ReadonlyMap<string, number>
  readonly middle: Behind
  /** Corners of the frame that meet something else than its middle does. */
  readonly cornersMissed: number
  readonly wallCorners: number
}

const CORNERS = [[0, 0], [1, 0], [0, 1], [1, 1]] as const

/** How everything of the set stands to the walls, the frame and the lens. */
export function fitOf(scene: Scene): Fit {
  const { view } = builtSet(scene)
  const middle = behindAt(scene, 0.5, 0.5)
  const corners = CORNERS.map(([x, y]) => behindAt(scene, x, y))
  const lens = { place: view.place, facing: view.ahead, surfaceId: null }
  return {
    things: thingsOf(scene, middle),
    atLens: new Map(scene.lights.filter(({ id }) => !isMet(middle, id)).map(({ id }) => [id, lightAtPoint(scene, id, lens).direct.flat])),
    middle,
    cornersMissed: corners.filter((met) => met.lightId !== middle.lightId || met.surfaceId !== middle.surfaceId).length,
    wallCorners: corners.filter(({ kind }) => kind === 'wall').length,
  }
}

function thingsOf(scene: Scene, middle: Behind): ThingFit[] {
  const body = new Occluders(builtSet(scene).form.parts, [], [])
  const box = roomBox(scene.room)
  const lights = scene.lights.map((light) => {
    const { corners, standTop } = lightBody(light)
    return { id: light.id, corners, stand: poleOf(standTop) }
  })
  const pieces = scene.pieces.map((piece) => ({ id: piece.id, corners: panelsOf(piece).flatMap(panelCorners), stand: [] }))
  return [...lights, ...pieces].map(({ id, corners, stand }): ThingFit => {
    const seen = (place: Vector): boolean => isSeen(scene, body, place, id)
    const isBackground = isMet(middle, id)
    return {
      id,
      past: farthestPast(corners, box),
      seenCorners: isBackground ? 0 : corners.filter(seen).length,
      seenStand: isBackground ? 0 : stand.filter(seen).length,
    }
  })
}

function poleOf([x, y, top]: Vector): readonly Vector[] {
  return [1, 0.75, 0.5, 0.25, 0].map((share): Vector => [x, y, top * share])
}

function farthestPast(corners: readonly Vector[], box: RoomBox): ThingFit['past'] {
  let metres = TOUCHING_METRES
  let side: RoomSide | null = null
  const weigh = (candidate: RoomSide, past: number): void => {
    if (past > metres) [metres, side] = [past, candidate]
  }
  for (const [x, y, z] of corners) {
    weigh('left', box.left - x)
    weigh('right', x - box.right)
    weigh('rear', y - box.rear)
    weigh('front', box.front - y)
    weigh('ceiling', z - (box.height - CEILING_CLEAR_METRES))
    weigh('floor', -z)
  }
  return side === null ? null : { side, metres }
}

/** In the frame, and not behind the subject, the paper or another piece as the camera sees it. */
function isSeen(scene: Scene, body: Occluders, place: Vector, ownId: string): boolean {
  const { view } = builtSet(scene)
  const position = framePositionOf(view, place)
  if (!isInFrame(position, FRAME_MARGIN)) return false
  if (body.shareSeen(view.place, place, POINT_METRES) < 0.5) return false
  const nearest = behindAt(scene, position.frameX, position.frameY)
  return isMet(nearest, ownId) || nearest.distanceMetres >= distance(place, view.place) - 0.02
}

function isMet(behind: Behind, id: string): boolean {
  return behind.lightId === id || (behind.surfaceId?.startsWith(`piece:${id}:`) ?? false)
}
