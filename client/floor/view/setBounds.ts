import type { Room } from '../../../shared-core/plan/schema/room.ts'
import { roomBox } from '../../../shared-core/set/room.ts'
import type { Thing } from '../things.ts'
import { boundsOf, grow, type Bounds } from './bounds.ts'
import { project, type ViewKind } from './projection.ts'

/** The room's outline in a drawing. */
export function roomBounds(room: Room, view: ViewKind): Bounds {
  const box = roomBox(room)
  return boundsOf([project(view, [box.left, box.front, 0]), project(view, [box.right, box.rear, box.height])])
}

/** What matters: everything that somebody has set up, with enough around it for tapes. */
export function setBounds(things: readonly Thing[], view: ViewKind): Bounds {
  const points = things.flatMap(({ place, solids, supports }) => [place, ...[...solids, ...supports].flatMap((solid) => solid.points)])
  return grow(boundsOf(points.map((point) => project(view, point))), 0.1)
}
