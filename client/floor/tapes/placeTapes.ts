import { grow, sharedArea, type Bounds } from '../view/bounds.ts'
import type { DrawnPoint } from '../view/projection.ts'

/** A tape to stick beside its thing, in pixels of the panel. */
export interface TapeToPlace {
  readonly id: string
  readonly width: number
  readonly height: number
  /** The thing it belongs to; the tape lies outside this. */
  readonly thing: Bounds
  /** The way the thing looks, so that the tape keeps out of its light; zeros when it has none. */
  readonly looksTowards: DrawnPoint
}

export interface PlacedTape {
  readonly id: string
  readonly bounds: Bounds
}

const GAP_PIXELS = 8
/** Sixteen places around a thing, near ones before far ones. */
const DIRECTIONS = 16
const REACHES = [0, 18, 40, 70, 110, 160, 230]

/**
 * Puts every tape beside its thing: never on another tape, off the things when there is room, inside the panel, behind
 * the light and not in its throw, and where it lay before unless another place is clearly better (so that tapes do not
 * hop while a hand moves something). Tapes placed first keep their ground.
 */
export function placeTapes(
  tapes: readonly TapeToPlace[],
  keepOff: readonly Bounds[],
  panel: Bounds,
  before: ReadonlyMap<string, DrawnPoint> = new Map(),
): PlacedTape[] {
  const placed: PlacedTape[] = []
  for (const tape of tapes) {
    const candidates = candidatesFor(tape, panel)
    let best = candidates[0]!
    let bestCost = Infinity
    for (const candidate of candidates) {
      const cost = costOf(tape, candidate, placed, keepOff, before.get(tape.id), bestCost)
      if (cost < bestCost) {
        best = candidate
        bestCost = cost
      }
    }
    placed.push({ id: tape.id, bounds: best.bounds })
  }
  return placed
}

interface Candidate {
  readonly bounds: Bounds
  readonly direction: DrawnPoint
  readonly reach: number
}

/** Where a tape lies seen from its thing, to be given back as `before` next time. */
export function offsetFromThing(placed: PlacedTape, thing: Bounds): DrawnPoint {
  const [x, y] = middleOf(placed.bounds)
  const [thingX, thingY] = middleOf(thing)
  return [x - thingX, y - thingY]
}

function candidatesFor(tape: TapeToPlace, panel: Bounds): Candidate[] {
  const [x, y] = middleOf(tape.thing)
  const halfWidth = (tape.thing.right - tape.thing.left) / 2 + tape.width / 2 + GAP_PIXELS
  const halfHeight = (tape.thing.bottom - tape.thing.top) / 2 + tape.height / 2 + GAP_PIXELS
  return REACHES.flatMap((reach) =>
    Array.from({ length: DIRECTIONS }, (_, i) => {
      const angle = (i * 2 * Math.PI) / DIRECTIONS
      const direction: DrawnPoint = [Math.cos(angle), Math.sin(angle)]
      // Onto the box around thing and half a tape, then `reach` further out.
      const toBox = Math.min(halfWidth / Math.max(1e-9, Math.abs(direction[0])), halfHeight / Math.max(1e-9, Math.abs(direction[1])))
      const centreX = x + direction[0] * (toBox + reach)
      const centreY = y + direction[1] * (toBox + reach)
      return { bounds: broughtInto(panel, boxAround(centreX, centreY, tape)), direction, reach }
    }),
  )
}

/** @returns at least `enough` for a place that costs more than that: then the rest is not looked at */
function costOf(
  tape: TapeToPlace,
  { bounds, direction, reach }: Candidate,
  placed: readonly PlacedTape[],
  keepOff: readonly Bounds[],
  before: DrawnPoint | undefined,
  enough: number,
): number {
  const area = tape.width * tape.height
  const [lookX, lookY] = tape.looksTowards
  const inThrow = lookX === 0 && lookY === 0 ? 0 : 1 + direction[0] * lookX + direction[1] * lookY
  let cost = reach / 45 + inThrow * 0.8 + hop(tape, bounds, before)
  const withGap = grow(bounds, 3)
  for (const other of placed) {
    if (cost >= enough) return cost
    // However small, an overlap is one: no nearness to the thing may buy it.
    if (sharedArea(bounds, other.bounds) > 0) cost += 200
    cost += (sharedArea(withGap, other.bounds) / area) * 100
  }
  for (const thing of keepOff) {
    if (cost >= enough) return cost
    cost += hidden(bounds, thing, area) * 9
  }
  return cost
}

/** How much of the smaller of the two a tape would hide or be hidden by, 0 to 1: a thin flag counts as much as a box. */
function hidden(bounds: Bounds, thing: Bounds, area: number): number {
  const thingArea = Math.max(1, (thing.right - thing.left) * (thing.bottom - thing.top))
  return sharedArea(bounds, thing) / Math.min(area, thingArea)
}

function hop(tape: TapeToPlace, bounds: Bounds, before: DrawnPoint | undefined): number {
  if (before === undefined) return 0
  const [x, y] = middleOf(bounds)
  const [thingX, thingY] = middleOf(tape.thing)
  const moved = Math.sqrt((x - thingX - before[0]) ** 2 + (y - thingY - before[1]) ** 2)
  return Math.min(1, moved / 60) * 1.2
}

function boxAround(x: number, y: number, { width, height }: TapeToPlace): Bounds {
  return { left: x - width / 2, top: y - height / 2, right: x + width / 2, bottom: y + height / 2 }
}

/** The box slid into the panel by the shortest way; a box too large for it lies at its top left. */
function broughtInto(panel: Bounds, box: Bounds): Bounds {
  const dx = Math.max(panel.left - box.left, Math.min(0, panel.right - box.right))
  const dy = Math.max(panel.top - box.top, Math.min(0, panel.bottom - box.bottom))
  return { left: box.left + dx, top: box.top + dy, right: box.right + dx, bottom: box.bottom + dy }
}

function middleOf(bounds: Bounds): DrawnPoint {
  return [(bounds.left + bounds.right) / 2, (bounds.top + bounds.bottom) / 2]
}
