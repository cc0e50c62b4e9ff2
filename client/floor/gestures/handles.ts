import type { Thing } from '../things.ts'
import { project, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import { pixelAt, type ViewTransform } from '../view/viewTransform.ts'
import { outlinesInPixels } from './hit.ts'

/** What a hand can hold of a selected thing besides the thing itself. */
export type HandleKind = 'aim' | 'turn' | 'top'

export interface Handle {
  readonly kind: HandleKind
  /** In pixels of the panel. */
  readonly at: DrawnPoint
}

/** From the outline to the turn handle, in pixels. */
const STEM_PIXELS = 26

/** The handles of a selected thing, in pixels. Turning hangs behind a light and before everything that faces somebody. */
export function handlesOf(thing: Thing, view: ViewKind, transform: ViewTransform): Handle[] {
  const handles: Handle[] = []
  if (thing.aim !== null) handles.push({ kind: 'aim', at: pixelAt(transform, project(view, thing.aim)) })
  if (thing.key.kind === 'backdrop') {
    if (view !== 'floor') handles.push({ kind: 'top', at: pixelAt(transform, project(view, thing.place)) })
    return handles
  }
  if (canTurn(thing, view)) handles.push({ kind: 'turn', at: turnHandleAt(thing, view, transform) })
  return handles
}

function canTurn(thing: Thing, view: ViewKind): boolean {
  const { kind } = thing.key
  if (kind === 'camera' || kind === 'point') return false
  if (kind === 'subject') return view === 'floor'
  return kind === 'light' || view !== 'camera'
}

function turnHandleAt(thing: Thing, view: ViewKind, transform: ViewTransform): DrawnPoint {
  const side = thing.key.kind === 'light' ? -1 : 1
  const [axisX, axisY] = project(view, thing.axis)
  const size = Math.sqrt(axisX * axisX + axisY * axisY)
  // Seen along its axis a thing has no direction in the drawing: up will do.
  const towards: DrawnPoint = size > 0.05 ? [(side * axisX) / size, (side * axisY) / size] : [0, -1]
  const middle = pixelAt(transform, project(view, thing.place))
  const reach = Math.max(
    0,
    ...outlinesInPixels(thing, view, transform)
      .flat()
      .map(([x, y]) => (x - middle[0]) * towards[0] + (y - middle[1]) * towards[1]),
  )
  return [middle[0] + towards[0] * (reach + STEM_PIXELS), middle[1] + towards[1] * (reach + STEM_PIXELS)]
}

/** The handle under a pixel, nearest first; null when none is within reach. */
export function handleAt(handles: readonly Handle[], pixel: DrawnPoint, reachPixels: number): HandleKind | null {
  let best: HandleKind | null = null
  let nearest = reachPixels
  for (const handle of handles) {
    const away = Math.sqrt((handle.at[0] - pixel[0]) ** 2 + (handle.at[1] - pixel[1]) ** 2)
    if (away <= nearest) {
      best = handle.kind
      nearest = away
    }
  }
  return best
}
