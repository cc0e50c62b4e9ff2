import type { Look } from '../../../shared-core/plan/schema/look.ts'
import type { Prediction } from '../../../shared-core/predict/prediction.ts'
import { handlesOf } from '../gestures/handles.ts'
import { outlinesInPixels } from '../gestures/hit.ts'
import { keyText, sameThing, type Thing, type ThingKey } from '../things.ts'
import { boundsOf, grow, sharedArea, type Bounds } from '../view/bounds.ts'
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
  /** False when the thing lies outside the panel. */
  readonly inSight: boolean
  /** A tape that is not shown is still there for the keyboard. */
  readonly shown: boolean
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
  readonly selected: ThingKey | null
}

/** In a panel narrower than this, tapes are short and labels wait until their thing is selected. */
const ROOMY_PIXELS = 480

/** Kept clear at the panel's edges; at the bottom lie the scale and the buttons. */
const EDGE_PIXELS = 6
const BOTTOM_PIXELS = 48

/**
 * Tapes of the lights and labels of everything else, each beside its thing. `memory` holds where each lay relative to
 * its thing and is brought up to date, so that tapes stay put while something else moves.
 */
export function layTapes(things: readonly Thing[], setting: TapeSetting, memory: Map<string, DrawnPoint>): LaidTape[] {
  const { view, transform, panel, selected } = setting
  const known = [...things]
    .map((thing) => {
      const outlines = outlinesInPixels(thing, view, transform)
      const box = boundsOf(outlines.flat())
      const inSight = isInSight(box, panel)
      const shown = inSight && (thing.key.kind === 'light' || panel.width >= ROOMY_PIXELS || sameThing(thing.key, selected))
      return { thing, id: keyText(thing.key), outlines, box, text: textOf(thing, setting), inSight, shown }
    })
    .sort((a, b) => placingOrder(a) - placingOrder(b))
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
    const { thing, id, box, text, outlines, inSight, shown } = known[i]!
    if (shown) memory.set(id, offsetFromThing(place, thing.key.kind === 'backdrop' ? backdropSpot(box) : box))
    return { thing, text, bounds: place.bounds, anchor: nearestOn(outlines, place.bounds), inSight, shown }
  })
}

function isInSight(box: Bounds, panel: PanelSize): boolean {
  return sharedArea(grow(box, 1), { left: 0, top: 0, right: panel.width, bottom: panel.height }) > 0
}

/** Lights first: their tapes take the best places. What is not shown comes last, so that none makes room for it. */
const KINDS_IN_ORDER: readonly ThingKey['kind'][] = ['light', 'camera', 'piece', 'subject', 'point', 'backdrop']

function placingOrder({ thing, shown }: { readonly thing: Thing; readonly shown: boolean }): number {
  return KINDS_IN_ORDER.indexOf(thing.key.kind) + (shown ? 0 : KINDS_IN_ORDER.length)
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

function textOf(thing: Thing, { look, prediction, length, panel }: TapeSetting): TapeText {
  const { key } = thing
  const light = key.kind === 'light' ? look.lights[key.id] : undefined
  if (key.kind !== 'light' || light === undefined) return labelOf(key, look, thing.place, length)
  return lightTape(light, prediction.lights.find(({ id }) => id === key.id), length, panel.width < ROOMY_PIXELS)
}

function unit([u, v]: DrawnPoint): DrawnPoint {
  const size = Math.sqrt(u * u + v * v)
  return size > 0.05 ? [u / size, v / size] : [0, 0]
}
