import type { Vector } from '../../../shared-core/arithmetic/vector.ts'

/** A point of a drawing in metres: `u` to the right, `v` down, as a screen counts. */
export type DrawnPoint = readonly [u: number, v: number]

/** The three ways to look at the set: from above with the camera at the bottom, from camera right, and from the camera. */
export const viewKinds = ['floor', 'side', 'camera'] as const
export type ViewKind = (typeof viewKinds)[number]

/** Where a point of the set falls in a drawing. In all three, what is right or up in the drawing is right or up for the viewer. */
export function project(view: ViewKind, place: Vector): DrawnPoint {
  if (view === 'floor') return [place[0], -place[1]]
  if (view === 'side') return [place[1], -place[2]]
  return [place[0], -place[2]]
}

/** The move in the set that a move in the drawing means; along the line of sight nothing moves. */
export function moveInSet(view: ViewKind, du: number, dv: number): Vector {
  if (view === 'floor') return [du, -dv, 0]
  if (view === 'side') return [0, du, -dv]
  return [du, 0, -dv]
}

/** The point of the set under a point of the drawing, at the depth of `reference` along the line of sight. */
export function placeInSet(view: ViewKind, drawn: DrawnPoint, reference: Vector): Vector {
  if (view === 'floor') return [drawn[0], -drawn[1], reference[2]]
  if (view === 'side') return [reference[0], drawn[0], -drawn[1]]
  return [drawn[0], reference[1], -drawn[1]]
}

/** Whether something that looks along `axis` turns its front to the viewer of the drawing. */
export function facesViewer(view: ViewKind, axis: Vector): boolean {
  if (view === 'floor') return axis[2] > 0
  return view === 'side' ? axis[0] > 0 : axis[1] < 0
}

/** How near the viewer of the drawing a place is; what is nearer is drawn later. */
export function nearness(view: ViewKind, place: Vector): number {
  if (view === 'floor') return place[2]
  return view === 'side' ? place[0] : -place[1]
}
