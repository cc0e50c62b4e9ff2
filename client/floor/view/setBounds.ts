import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Backdrop, Look } from '../../../shared-core/plan/schema/look.ts'
import type { Room } from '../../../shared-core/plan/schema/room.ts'
import { panelCorners } from '../../../shared-core/set/panels.ts'
import { paperPanel, roomBox } from '../../../shared-core/set/room.ts'
import { boundsOf, grow, type Bounds } from './bounds.ts'
import { project, type ViewKind } from './projection.ts'

/** The room's outline in a drawing. */
export function roomBounds(room: Room, view: ViewKind): Bounds {
  const box = roomBox(room)
  return boundsOf([project(view, [box.left, box.front, 0]), project(view, [box.right, box.rear, box.height])])
}

/** What matters: everything somebody has set up, with enough around it for tapes. */
export function setBounds(look: Look, view: ViewKind): Bounds {
  const places: Vector[] = [
    ...Object.values(look.lights).map((light) => light.place),
    ...Object.values(look.pieces).map((piece) => piece.place),
    ...Object.values(look.points).map((point) => point.place),
    look.camera.place,
  ].map((place): Vector => [place.xMetres, place.yMetres, place.zMetres])
  const { subject } = look
  places.push([subject.xMetres, subject.yMetres, 0], [subject.xMetres, subject.yMetres, subject.heightMetres])
  places.push(...backdropCorners(look.backdrop))
  return grow(boundsOf(places.map((place) => project(view, place))), 0.45)
}

/** The paper's corners from its foot at camera left round to its top; none without paper. */
export function backdropCorners(backdrop: Backdrop): readonly Vector[] {
  const paper = paperPanel(backdrop)
  return paper === null ? [] : panelCorners(paper)
}
