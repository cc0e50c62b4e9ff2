import type { DrawnPoint } from './projection.ts'

/** A box in a drawing, in whatever unit its points are in. */
export interface Bounds {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** The smallest box around the points; a box of no size at the origin when there are none. */
export function boundsOf(points: readonly DrawnPoint[]): Bounds {
  if (points.length === 0) return { left: 0, top: 0, right: 0, bottom: 0 }
  let left = Infinity
  let top = Infinity
  let right = -Infinity
  let bottom = -Infinity
  for (const [u, v] of points) {
    left = Math.min(left, u)
    right = Math.max(right, u)
    top = Math.min(top, v)
    bottom = Math.max(bottom, v)
  }
  return { left, top, right, bottom }
}

/** The box grown by `margin` on every side. */
export function grow(bounds: Bounds, margin: number): Bounds {
  return { left: bounds.left - margin, top: bounds.top - margin, right: bounds.right + margin, bottom: bounds.bottom + margin }
}

/** The area that two boxes share; 0 when they are apart or only touch. */
export function sharedArea(a: Bounds, b: Bounds): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left)
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
  return width > 0 && height > 0 ? width * height : 0
}
