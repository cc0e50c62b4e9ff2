import { add, dot, scale, subtract, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import { changeBackdrop, changeCamera, changeSubject } from '../../../shared-core/plan/edits/look.ts'
import { changePiece, movePiece } from '../../../shared-core/plan/edits/pieces.ts'
import { aimLight, moveLight, turnLight } from '../../../shared-core/plan/edits/placing.ts'
import { movePoint } from '../../../shared-core/plan/edits/points.ts'
import type { EditResult } from '../../../shared-core/plan/edits/changing.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { Place } from '../../../shared-core/plan/schema/quantities.ts'
import type { Thing } from '../things.ts'
import { moveInSet, project, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import type { HandleKind } from './handles.ts'
import { toCentimetres } from './toCentimetres.ts'

/** A hand on a thing: what it took hold of, and where it was then. */
export interface Drag {
  readonly thing: Thing
  readonly handle: HandleKind | 'body'
  readonly view: ViewKind
  /** Where the hand closed, in metres of the drawing. */
  readonly from: DrawnPoint
}

/**
 * The edit that a drag means once the hand is at `to` (metres of the drawing). Always from the plan before the drag, so
 * that a long drag adds up no rounding.
 * @param alongAxis only nearer and farther along the thing's own axis (Shift).
 */
export function dragEdit(plan: Plan, lookId: string, drag: Drag, to: DrawnPoint, alongAxis: boolean): EditResult {
  const { thing, handle, view, from } = drag
  if (handle === 'turn') return turnEdit(plan, lookId, thing, view, turnOnScreen(drag, to))
  const move = moveInSet(view, to[0] - from[0], to[1] - from[1])
  if (handle === 'aim' && thing.aim !== null) return aimEdit(plan, lookId, thing, changedPlace(thing.aim, move))
  if (handle === 'top') return changeBackdrop(plan, lookId, { topMetres: toCentimetres(thing.place[2] + move[2]) })
  return moveEdit(plan, lookId, thing, alongAxis ? alongOwnAxis(thing, move) : move)
}

/** Moves a thing by a vector of the set, in metres, to whole centimetres. */
export function moveEdit(plan: Plan, lookId: string, thing: Thing, move: Vector): EditResult {
  const { key } = thing
  const place = changedPlace(thing.place, move)
  switch (key.kind) {
    case 'light':
      return moveLight(plan, lookId, key.id, place)
    case 'piece':
      return movePiece(plan, lookId, key.id, place)
    case 'point':
      return movePoint(plan, lookId, key.id, place)
    case 'camera':
      return changeCamera(plan, lookId, { place })
    case 'subject':
      return changeSubject(plan, lookId, { xMetres: place.xMetres, yMetres: place.yMetres })
    case 'backdrop':
      return changeBackdrop(plan, lookId, { yMetres: place.yMetres })
  }
}

/**
 * Turns a thing where it stands by whole degrees, clockwise in the drawing. From above that swings it; from the side and
 * from the camera it tips it.
 */
export function turnEdit(plan: Plan, lookId: string, thing: Thing, view: ViewKind, clockwiseDegrees: number): EditResult {
  const { key } = thing
  const degrees = Math.round(clockwiseDegrees)
  // Clockwise on screen lifts what looks left and lowers what looks right.
  const lift = project(view, thing.axis)[0] > 0 ? -degrees : degrees
  if (key.kind === 'light') return turnLight(plan, lookId, key.id, view === 'floor' ? { turnDegrees: degrees } : { tiltDegrees: lift })
  if (key.kind === 'subject') {
    const subject = plan.looks[lookId]?.subject
    return changeSubject(plan, lookId, { turnDegrees: wrapDegrees((subject?.turnDegrees ?? 0) - degrees) })
  }
  if (key.kind === 'piece') {
    const piece = plan.looks[lookId]?.pieces[key.id]
    if (view === 'floor') return changePiece(plan, lookId, key.id, { facingDegrees: wrapDegrees((piece?.facingDegrees ?? 0) - degrees) })
    return changePiece(plan, lookId, key.id, { tiltDegrees: (piece?.tiltDegrees ?? 0) + lift })
  }
  return { ok: false, message: 'This is pointed, not turned: drag its aim.' }
}

/** Points a light or the camera at a place. */
export function aimEdit(plan: Plan, lookId: string, thing: Thing, aim: Partial<Place>): EditResult {
  if (thing.key.kind === 'light') return aimLight(plan, lookId, thing.key.id, aim)
  return changeCamera(plan, lookId, { aim })
}

/** Degrees in the range from -180 up to 180. */
export function wrapDegrees(degrees: number): number {
  const turned = ((degrees % 360) + 360) % 360
  return turned >= 180 ? turned - 360 : turned
}

function turnOnScreen({ thing, view, from }: Drag, to: DrawnPoint): number {
  const [middleU, middleV] = project(view, thing.place)
  const angle = (point: DrawnPoint) => Math.atan2(point[1] - middleV, point[0] - middleU)
  return wrapDegrees(((angle(to) - angle(from)) * 180) / Math.PI)
}

function alongOwnAxis({ axis }: Thing, move: Vector): Vector {
  return scale(axis, dot(axis, move))
}

/** Only the coordinates that really move, so that a height another person changes meanwhile stays theirs. */
function changedPlace(from: Vector, move: Vector): Partial<Place> {
  const to = add(from, move)
  const moved = subtract(to, from)
  return {
    ...(moved[0] !== 0 && { xMetres: toCentimetres(to[0]) }),
    ...(moved[1] !== 0 && { yMetres: toCentimetres(to[1]) }),
    ...(moved[2] !== 0 && { zMetres: toCentimetres(to[2]) }),
  }
}
