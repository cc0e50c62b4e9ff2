import { keyText, type Thing, type ThingKey } from '../things.ts'
import { silhouette } from '../solids/solid.ts'
import { project, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import { pixelAt, type ViewTransform } from '../view/viewTransform.ts'

/** Half of the smallest target a finger can be asked to meet (44 px across), and a mouse's. */
export const REACH_PIXELS = { touch: 22, mouse: 7 } as const

/**
 * The thing under a pixel, or the nearest within reach; null when none is near. What is hit outright comes before what is
 * only near; among those hit, small before large, so that a head behind an umbrella can be taken.
 */
export function thingAt(
  things: readonly Thing[],
  view: ViewKind,
  transform: ViewTransform,
  pixel: DrawnPoint,
  reachPixels: number,
): ThingKey | null {
  let best: { readonly key: ThingKey; readonly rank: number } | null = null
  for (const thing of things) {
    const outlines = outlinesInPixels(thing, view, transform)
    const away = Math.min(...outlines.map((outline) => distanceToOutline(pixel, outline)))
    if (away > reachPixels) continue
    // Outside: by distance, behind everything that is hit; inside: by size.
    const size = Math.max(...outlines.map(areaOf))
    const rank = away > 0 ? 1e9 + away : size
    if (best === null || rank <= best.rank) best = { key: thing.key, rank }
  }
  return best?.key ?? null
}

/** The outlines by which a thing is taken, in pixels; a point without a body counts as itself. */
export function outlinesInPixels(thing: Thing, view: ViewKind, transform: ViewTransform): DrawnPoint[][] {
  const outlines = thing.solids.map((solid) => silhouette(solid, view).map((point) => pixelAt(transform, point)))
  return outlines.length > 0 ? outlines : [[pixelAt(transform, project(view, thing.place))]]
}

/** 0 inside a closed outline, else the distance to its nearest edge. */
export function distanceToOutline(point: DrawnPoint, outline: readonly DrawnPoint[]): number {
  if (outline.length === 0) return Infinity
  if (outline.length > 2 && inside(point, outline)) return 0
  let nearest = Infinity
  for (let i = 0; i < outline.length; i++) {
    nearest = Math.min(nearest, distanceToEdge(point, outline[i]!, outline[(i + 1) % outline.length]!))
  }
  return nearest
}

function inside([x, y]: DrawnPoint, outline: readonly DrawnPoint[]): boolean {
  let isInside = false
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[i]!
    const [bx, by] = outline[j]!
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) isInside = !isInside
  }
  return isInside
}

function distanceToEdge([x, y]: DrawnPoint, [ax, ay]: DrawnPoint, [bx, by]: DrawnPoint): number {
  const length2 = (bx - ax) ** 2 + (by - ay) ** 2
  const along = length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length2))
  return Math.sqrt((x - ax - along * (bx - ax)) ** 2 + (y - ay - along * (by - ay)) ** 2)
}

function areaOf(outline: readonly DrawnPoint[]): number {
  let twice = 0
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    twice += outline[j]![0] * outline[i]![1] - outline[i]![0] * outline[j]![1]
  }
  return Math.abs(twice) / 2
}

/** The thing with this key, if it is there. */
export function findThing(things: readonly Thing[], key: ThingKey | null): Thing | null {
  return key === null ? null : (things.find((thing) => keyText(thing.key) === keyText(key)) ?? null)
}
