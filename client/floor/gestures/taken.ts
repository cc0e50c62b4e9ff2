import { keyText, type Thing } from '../things.ts'
import type { DrawnPoint } from '../view/projection.ts'
import type { Drag } from './dragEdit.ts'
import { handleAt, handlesOf } from './handles.ts'
import { findThing, REACH_PIXELS, thingAt } from './hit.ts'
import type { Scene } from './scene.ts'

/** Handles lie close to what they belong to: a little more reach tells them apart from it. */
const HANDLE_EXTRA_PIXELS = 4

/** What a pointer takes hold of: a tape, a handle of the selected thing, or a thing, in that order; null for the floor. */
export function takenAt(scene: Scene, pixel: DrawnPoint, event: MouseEvent): { readonly thing: Thing; readonly handle: Drag['handle'] } | null {
  const { view, transform, things, selected } = scene
  const mark = tapeUnder(event)
  if (mark !== null) {
    const thing = things.find(({ key }) => keyText(key) === mark)
    return thing === undefined ? null : { thing, handle: 'body' }
  }
  const reach = isTouch(event) ? REACH_PIXELS.touch : REACH_PIXELS.mouse
  const chosen = findThing(things, selected)
  const handle = chosen === null ? null : handleAt(handlesOf(chosen, view, transform), pixel, reach + HANDLE_EXTRA_PIXELS)
  if (chosen !== null && handle !== null) return { thing: chosen, handle }
  const thing = findThing(things, thingAt(things, view, transform, pixel, reach))
  return thing === null ? null : { thing, handle: 'body' }
}

/** Buttons and words that lie over the drawing keep their own presses. */
export function isOverControls(event: Event): boolean {
  return event.target instanceof Element && event.target.closest('[data-thing]') === null && event.target.closest('button, [role="group"]') !== null
}

export function isTouch(event: Event): boolean {
  return event instanceof PointerEvent && event.pointerType === 'touch'
}

function tapeUnder(event: Event): string | null {
  return event.target instanceof Element ? (event.target.closest('[data-thing]')?.getAttribute('data-thing') ?? null) : null
}
