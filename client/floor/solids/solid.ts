import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import { project, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import { convexHull } from './hull.ts'

/**
 * A convex body in the set, as points it is the hull of. Everything on the Floor is made of these, in true size, so that
 * one description gives its outline from above, from the side and from the camera.
 */
export interface Solid {
  readonly part: SolidPart
  readonly points: readonly Vector[]
}

export const solidParts = [
  'front', 'body', 'head', 'column', 'leg', 'arm', 'panel', 'camera', 'lens', 'flesh', 'cloth', 'hair',
] as const
export type SolidPart = (typeof solidParts)[number]

/** By body: what does not move is outlined once, however often something else is drawn. */
const outlines = new WeakMap<Solid, Partial<Record<ViewKind, readonly DrawnPoint[]>>>()

/** The outline of a body as that view sees it, in metres of the drawing. Two points for a thing seen edge on. */
export function silhouette(solid: Solid, view: ViewKind): readonly DrawnPoint[] {
  let known = outlines.get(solid)
  if (known === undefined) outlines.set(solid, (known = {}))
  return (known[view] ??= convexHull(solid.points.map((point) => project(view, point))))
}

/** Points around a circle, for round fronts and tubes. */
export function ring(centre: Vector, right: Vector, up: Vector, radius: number, corners: number): Vector[] {
  return Array.from({ length: corners }, (_, i) => {
    const angle = (i * 2 * Math.PI) / corners
    const across = radius * Math.cos(angle)
    const along = radius * Math.sin(angle)
    return [
      centre[0] + right[0] * across + up[0] * along,
      centre[1] + right[1] * across + up[1] * along,
      centre[2] + right[2] * across + up[2] * along,
    ] as const
  })
}
