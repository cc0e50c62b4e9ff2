import type { Look } from '../../../shared-core/plan/schema/look.ts'
import type { Prediction } from '../../../shared-core/predict/prediction.ts'
import { handlesOf } from '../gestures/handles.ts'
import { outlinesInPixels } from '../gestures/hit.ts'
import { keyText, type Thing } from '../things.ts'
import { boundsOf, grow, type Bounds } from '../view/bounds.ts'
import { project, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import type { PanelSize, ViewTransform } from '../view/viewTransform.ts'
import { offsetFromThing, placeTapes } from './placeTapes.ts'
import { sizeOfTape, type MeasureText } from './tapeSizes.ts'
import { labelOf, lightTape, type LengthText, type TapeText } from './tapeText.ts'

/** A tape where it lies, in pixels of the panel. */
export interface LaidTape {
  readonly thing: Thing
  readonly text: TapeText
  readonly bounds: Bounds
  /** The nearest point of the thing: where a hairline from the tape ends. */
  readonly anchor: DrawnPoint
}

export interface TapeSetting {
  readonly look: Look
  readonly prediction: Prediction
  readonly view: ViewKind
  readonly transform: ViewTransform
  readonly panel: PanelSize
  readonly length: LengthText
  readonly measure: MeasureText
  readonly lineHeight: number
}

/** Kept clear at the panel's edges; at the bottom lie the scale and the buttons. */
const EDGE_PIXELS = 6
const BOTTOM_PIXELS = 48

/**
 * Tapes of the lights and labels of everything else, each beside its thing. `memory` holds where each lay relative to
 * its thing and is brought up to date, so that tapes stay put while something else moves.
 */
export function layTapes(things: readonly Thing[], setting: TapeSetting, memory: Map<string, DrawnPoint>): LaidTape[] {
  const { view, transform, panel } = setting
  const known = [...things].sort((a, b) => order(a) - order(b)).map((thing) => {
    const outlines = outlinesInPixels(thing, view, transform)
    return { thing, id: keyText(thing.key), outlines, box: boundsOf(outlines.flat()), text: textOf(thing, setting) }
  })
  const placed = placeTapes(
    known.map(({ thing, id, box, text }) => ({
      id,
      ...sizeOfTape(text, setting.measure, setting.lineHeight),
      thing: thing.key.kind === 'backdrop' ? backdropSpot(box) : box,
      looksTowards: thing.key.kind === 'light' ? unit(project(view, thing.axis)) : [0, 0],
    })),
    known.flatMap(({ thing, outlines }) => [...keepOffBoxes(thing, outlines, view), ...turnHandleBoxes(thing, view, transform)]),
    { left: EDGE_PIXELS, top: EDGE_PIXELS, right: panel.width - EDGE_PIXELS, bottom: panel.height - BOTTOM_PIXELS },
    memory,
  )
  return placed.map((place, i) => {
    const { thing, id, box, text, outlines } = known[i]!
    memory.set(id, offsetFromThing(place, thing.key.kind === 'backdrop' ? backdropSpot(box) : box))
    return { thing, text, bounds: place.bounds, anchor: nearestOn(outlines, place.bounds) }
  })
}

/** Lights first: their tapes take the best places. */
function order(thing: Thing): number {
  return ['light', 'camera', 'piece', 'subject', 'point', 'backdrop'].indexOf(thing.key.kind)
}

/** Boxes that no tape should lie on. A thin thing gets a little width; the paper seen full on is ground, not a thing. */
function keepOffBoxes(thing: Thing, outlines: readonly (readonly DrawnPoint[])[], view: ViewKind): Bounds[] {
  if (thing.key.kind === 'backdrop' && view === 'camera') return []
  return outlines.map((outline) => grow(boundsOf(outline), 5))
}

/** Where the turn handle hangs once the thing is selected: kept free all along, so that selecting moves no tape. */
function turnHandleBoxes(thing: Thing, view: ViewKind, transform: ViewTransform): Bounds[] {
  return handlesOf(thing, view, transform).flatMap(({ kind, at }) => (kind === 'turn' ? [grow(boundsOf([at]), 9)] : []))
}

function nearestOn(outlines: readonly (readonly DrawnPoint[])[], bounds: Bounds): DrawnPoint {
  let nearest: DrawnPoint = [bounds.left, bounds.top]
  let least = Infinity
  for (const [x, y] of outlines.flat()) {
    const dx = x - Math.min(bounds.right, Math.max(bounds.left, x))
    const dy = y - Math.min(bounds.bottom, Math.max(bounds.top, y))
    if (dx * dx + dy * dy < least) {
      least = dx * dx + dy * dy
      nearest = [x, y]
    }
  }
  return nearest
}

/** The paper is wide: its label lies by one end. */
function backdropSpot(box: Bounds): Bounds {
  return { ...box, right: Math.min(box.right, box.left + 40) }
}

function textOf(thing: Thing, { look, prediction, length }: TapeSetting): TapeText {
  const { key } = thing
  const light = key.kind === 'light' ? look.lights[key.id] : undefined
  if (key.kind !== 'light' || light === undefined) return labelOf(key, look, thing.place, length)
  return lightTape(light, prediction.lights.find(({ id }) => id === key.id), length)
}

function unit([u, v]: DrawnPoint): DrawnPoint {
  const size = Math.sqrt(u * u + v * v)
  return size > 0.05 ? [u / size, v / size] : [0, 0]
}
