import type { Units } from '../../shared-core/plan/entry/length.ts'
import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { roomBox } from '../../shared-core/set/room.ts'
import { marksOf, type Taped } from '../../shared-core/stands/marks.ts'
import { silhouette } from '../floor/solids/solid.ts'
import { leadingEdge } from '../floor/solids/hull.ts'
import { thingsOf, type Thing } from '../floor/things.ts'
import { project, type DrawnPoint } from '../floor/view/projection.ts'
import { boundsOf, grow, type Bounds } from '../floor/view/bounds.ts'
import { hatchLines, hatchOf } from './hatch.ts'
import type { Paper, PaperPoint } from './paper.ts'
import { POINTS_PER_METRE } from './paper.ts'
import type { PrintedLook } from './printJob.ts'

/** Scales that rulers have: metric ones, and those of the architect's foot. */
const SCALES: Readonly<Record<Units, readonly (readonly [one: number, words: string])[]>> = {
  metric: [[20, '1 : 20'], [25, '1 : 25'], [40, '1 : 40'], [50, '1 : 50'], [75, '1 : 75'], [100, '1 : 100'], [150, '1 : 150'], [200, '1 : 200'], [500, '1 : 500']],
  imperial: [[24, '½" = 1 ft'], [32, '⅜" = 1 ft'], [48, '¼" = 1 ft'], [64, '3/16" = 1 ft'], [96, '⅛" = 1 ft'], [192, '1/16" = 1 ft'], [500, '1 : 500']],
}

export interface FloorBox {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

interface Drawing {
  readonly paper: Paper
  readonly box: FloorBox
  readonly at: (point: DrawnPoint) => PaperPoint
  readonly pointsPerMetre: number
  readonly taken: Bounds[]
}

export interface FloorOptions {
  readonly units: Units
  /** The one stand the page is about: it is drawn black, the others faint. */
  readonly focus?: { readonly id: string; readonly taped: Taped }
}

/** The set from above, to a scale that rulers have, camera at the bottom. Gels are hatched, each in its own way. */
export function drawFloor(paper: Paper, of: PrintedLook, box: FloorBox, { units, focus }: FloorOptions): void {
  const { plan, look } = of
  const things = thingsOf(plan, look).filter(({ key }) => key.kind !== 'light' || look.lights[key.id]!.on)
  const marks = marksOf(plan, look)
  const about = focus === undefined ? things : things.filter((thing) => isFocus(thing, focus.id) || thing.key.kind === 'subject')
  const tapedFrom = focus === undefined ? marks : focus.taped.from.map(({ mark }) => mark)
  const points = about.flatMap(({ place, solids, supports }) => [place, ...[...solids, ...supports].flatMap((solid) => solid.points)])
  const shown = grow(boundsOf([...points.map((point) => project('floor', point)), ...tapedFrom.map(({ xMetres, yMetres }): DrawnPoint => [xMetres, -yMetres])]), 0.15)
  const inner = { x: box.x + 2, y: box.y + 2, width: box.width - 4, height: box.height - 18 }
  const fitting = SCALES[units].find(([one]) => (shown.right - shown.left) * POINTS_PER_METRE <= inner.width * one && (shown.bottom - shown.top) * POINTS_PER_METRE <= inner.height * one)
  const [one, scaleWords] = fitting ?? SCALES[units].at(-1)!
  const pointsPerMetre = POINTS_PER_METRE / one
  const [u, v] = [(shown.left + shown.right) / 2, (shown.top + shown.bottom) / 2]
  const drawing: Drawing = {
    paper, box: inner, pointsPerMetre, taken: [],
    at: ([x, y]) => [inner.x + inner.width / 2 + (x - u) * pointsPerMetre, inner.y + inner.height / 2 + (y - v) * pointsPerMetre],
  }
  paper.within(box.x, box.y, box.width, box.height - 12, () => {
    drawRoom(drawing, of)
    for (const thing of things) drawThing(drawing, of, thing, focus === undefined ? 'plain' : isFocus(thing, focus.id) ? 'focus' : 'faint')
    if (focus !== undefined) drawTapes(drawing, things.find((thing) => isFocus(thing, focus.id)), focus.taped, units)
  })
  // Letters first: they have to stand by their light.
  for (const kind of LABELLED) {
    for (const thing of things) if (thing.key.kind === kind && isInside(drawing, thing)) labelThing(drawing, of, thing, focus?.id)
  }
  drawScale(paper, box, pointsPerMetre, scaleWords, units)
}

const LABELLED = ['light', 'subject', 'camera', 'backdrop', 'piece'] as const

function isInside({ box, at }: Drawing, { place }: Thing): boolean {
  const [x, y] = at(project('floor', place))
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height
}

const isFocus = ({ key }: Thing, id: string): boolean => 'id' in key && key.id === id

/** Walls, columns, and the T. */
function drawRoom({ paper, at, pointsPerMetre }: Drawing, { plan, look }: PrintedLook): void {
  const room = roomBox(plan.room)
  const [left, top] = at([room.left, -room.rear])
  const [right, bottom] = at([room.right, -room.front])
  paper.box(left, top, right - left, bottom - top, null, 0.45, 2)
  for (const { xMetres, yMetres, widthMetres, depthMetres } of Object.values(plan.room.columns)) {
    const [x, y] = at([xMetres - widthMetres / 2, -(yMetres + depthMetres / 2)])
    paper.box(x, y, widthMetres * pointsPerMetre, depthMetres * pointsPerMetre, 0.7, 0.2)
  }
  const { xMetres: x, yMetres: y } = look.subject
  paper.line([at([x - 0.3, -y]), at([x + 0.3, -y])], 1.6)
  paper.line([at([x, -y]), at([x, -y + 0.45])], 1.6)
}

function drawThing(drawing: Drawing, of: PrintedLook, thing: Thing, how: 'plain' | 'focus' | 'faint'): void {
  const { paper, at } = drawing
  const ink = how === 'faint' ? 0.55 : 0
  const outline = (points: readonly DrawnPoint[]): PaperPoint[] => points.map(at)
  for (const solid of thing.supports) {
    const path = outline(silhouette(solid, 'floor'))
    if (solid.part === 'column') paper.area(path, ink, ink, 0.4)
    else paper.line(path, solid.part === 'arm' ? 1.4 : 0.7, ink)
  }
  for (const solid of thing.solids) {
    const points = silhouette(solid, 'floor')
    const path = outline(points)
    if (thing.key.kind === 'backdrop') paper.line(path, 2.4, 0)
    else if (solid.part === 'panel') paper.area(path, how === 'focus' ? 0 : 0.8, ink, 1)
    else if (solid.part !== 'front') paper.area(path, how === 'focus' ? 0.8 : 1, ink, 0.7)
  }
  if (thing.key.kind !== 'light') return
  const front = thing.solids.find(({ part }) => part === 'front')
  const light = of.look.lights[thing.key.id]!
  const body = thing.solids.find(({ part }) => part === 'body')
  if (front === undefined) return
  const gelId = light.gelIds.at(-1)
  if (gelId !== undefined && body !== undefined) {
    const lines = hatchLines(outline(silhouette(body, 'floor')), hatchOf(gelOrder(of).indexOf(gelId)))
    for (const line of lines) paper.line(line, 0.5, ink)
  }
  paper.line(leadingEdge(silhouette(front, 'floor'), project('floor', thing.axis)).map(at), 2.2, ink)
  const [axisU, axisV] = project('floor', thing.axis)
  const size = Math.sqrt(axisU * axisU + axisV * axisV)
  if (size < 0.2) return
  // An arrow the way it looks: outlines alone do not say front from back at this size.
  const tip = at([thing.place[0] + (axisU / size) * 0.45, -thing.place[1] + (axisV / size) * 0.45])
  paper.line([at(project('floor', thing.place)), tip], 0.8, ink)
}

/** Gels of a look in the order of its lights: which hatch is whose. */
export function gelOrder({ look, prediction }: Pick<PrintedLook, 'look' | 'prediction'>): readonly string[] {
  return [...new Set(prediction.lights.flatMap(({ id }) => look.lights[id]?.gelIds.slice(-1) ?? []))]
}

function drawTapes(drawing: Drawing, thing: Thing | undefined, { from }: Taped, units: Units): void {
  if (thing === undefined) return
  const { paper, at } = drawing
  const foot = at([thing.place[0], -thing.place[1]])
  for (const { mark, floorMetres } of from) {
    const end = at([mark.xMetres, -mark.yMetres])
    paper.line([end, foot], 1, 0, [4, 2.5])
    paper.area(ringAt(end, 2.2), 0, null)
    // Nearer to the mark: there the two tapes are apart.
    label(drawing, formatLength(floorMetres, units), [end[0] + (foot[0] - end[0]) * 0.42, end[1] + (foot[1] - end[1]) * 0.42], 8.5, false)
  }
  paper.area(ringAt(foot, 2.6), 0, 1, 0.8)
}

function ringAt([x, y]: PaperPoint, radius: number): PaperPoint[] {
  return Array.from({ length: 16 }, (_, i) => [x + radius * Math.cos((i * Math.PI) / 8), y + radius * Math.sin((i * Math.PI) / 8)])
}

function labelThing(drawing: Drawing, { look }: PrintedLook, thing: Thing, focusId: string | undefined): void {
  const { key, place, axis } = thing
  const [x, y] = drawing.at(project('floor', place))
  const size = focusId === undefined ? 11 : 9
  switch (key.kind) {
    case 'light': {
      const [u, v] = project('floor', axis)
      const away = Math.sqrt(u * u + v * v) || 1
      const behind = Math.max(11, 0.28 * drawing.pointsPerMetre)
      label(drawing, look.lights[key.id]!.letter, [x - (u / away) * behind, y - (v / away) * behind], key.id === focusId ? 14 : size, true)
      return
    }
    case 'piece':
      label(drawing, look.pieces[key.id]!.label, [x, y - 9], size - 3, false, MOST_LABEL)
      return
    case 'camera':
      label(drawing, 'camera', [x, y + 12], size - 3, false)
      return
    case 'subject':
      label(drawing, 'T', [x + 0.42 * drawing.pointsPerMetre + 4, y], size - 2, false)
      return
    case 'backdrop':
      label(drawing, 'paper', [x, y - 5], size - 3, false)
  }
}

/** Of a piece: its page has the whole name. */
const MOST_LABEL = 64

function shortened({ letters }: Paper, words: string, size: number, most: number): string {
  const text = letters.printable(words)
  if (letters.widthOf(text, size, 'regular') <= most) return text
  let short = text
  while (letters.widthOf(`${short}…`, size, 'regular') > most) short = short.slice(0, -1)
  return `${short.trimEnd()}…`
}

/** A word on white, moved aside where another stands already, and kept inside the drawing. */
function label({ paper, box, taken }: Drawing, words: string, [x, y]: PaperPoint, size: number, boxed: boolean, most = Infinity): void {
  const text = shortened(paper, words, size, most)
  const width = Math.min(paper.letters.widthOf(text, size, boxed ? 'bold' : 'regular') + (boxed ? 6 : 3), box.width)
  const height = size + (boxed ? 3 : 1)
  const tries = [[0, 0], [0, -1], [0, 1], [1, 0], [-1, 0], [1, -1], [-1, 1], [1, 1], [-1, -1], [0, -2], [0, 2], [2, 0], [-2, 0], [0, 3], [0, -3]] as const
  const boundsAt = ([right, down]: readonly [number, number]): Bounds => {
    const left = Math.min(Math.max(x - width / 2 + right * (width * 0.6 + 2), box.x), box.x + box.width - width)
    const top = Math.min(Math.max(y - height / 2 + down * (height + 1), box.y), box.y + box.height - height)
    return { left, top, right: left + width, bottom: top + height }
  }
  const isFree = (one: Bounds): boolean => taken.every((other) => one.right <= other.left || one.left >= other.right || one.bottom <= other.top || one.top >= other.bottom)
  const found = tries.map(boundsAt).find(isFree) ?? boundsAt([0, 0])
  taken.push(found)
  paper.box(found.left, found.top, width, height, 1, boxed ? 0 : null, 0.9)
  paper.text(text, found.left + width / 2, found.top + height / 2 + size * 0.35, { size, weight: boxed ? 'bold' : 'regular', align: 'centre' }, width)
}

/** A bar of whole metres (or feet) with the scale in words, under the drawing. */
function drawScale(paper: Paper, { x, y, width, height }: FloorBox, pointsPerMetre: number, words: string, units: Units): void {
  const unitMetres = units === 'metric' ? 1 : 0.3048 * 2
  const step = unitMetres * pointsPerMetre
  const base = y + height - 4
  const count = 2
  for (let i = 0; i < count; i++) paper.box(x + 2 + i * step, base - 3, step, 3, i % 2 === 0 ? 0 : 1, 0, 0.5)
  paper.text(`${units === 'metric' ? `${count} m` : `${2 * count} ft`} · ${words} printed at 100 % · camera at the bottom`, x + count * step + 8, base, { size: 7 }, width - count * step - 10)
}
