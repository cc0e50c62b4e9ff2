import type { AreaPrediction, LightPrediction, Prediction } from '../../shared-core/predict/prediction.ts'
import { shortAreaName } from './areaNames.ts'
import { heightOf, ladderScale, pinnedAt, type LadderScale, type Pinned } from './scale.ts'
import { spreadLabels } from './spreadLabels.ts'
import { whiteLines, type WhiteLine } from './whiteLines.ts'

/** Widths of the ladder's parts in pixels; the sides share what the ruler leaves. */
export interface LadderColumns {
  readonly widthPixels: number
  /** Edges of the ruler in the middle. */
  readonly rulerLeft: number
  readonly rulerRight: number
  /** Inner edge of the areas' colour patches, and of the lights' tapes. */
  readonly patchRight: number
  readonly tapeLeft: number
  readonly tapeWidth: number
}

/** Something hung on the ladder: its true height, and the height of its label. */
export interface Hung<Thing> {
  readonly thing: Thing
  readonly truePixels: number
  readonly labelPixels: number
  readonly pinned: Pinned
}

/** One line of the areas' side; on a small ladder the background's corners share one. */
export interface AreaRow {
  readonly area: AreaPrediction
  readonly name: string
}

export interface LadderLayout {
  readonly scale: LadderScale
  readonly columns: LadderColumns
  readonly areas: readonly Hung<AreaRow>[]
  readonly lights: readonly Hung<LightPrediction>[]
  readonly whites: readonly Hung<WhiteLine>[]
}

export interface LadderRoom {
  readonly widthPixels: number
  readonly heightPixels: number
  /** For thumbs: rows as high as a thumb needs, and fewer of them. */
  readonly forThumbs: boolean
}

const MARGIN_PIXELS = 22
const RULER_PIXELS = 50
const WHITE_LABEL_PIXELS = 15

const rowPixels = (forThumbs: boolean) => (forThumbs ? 48 : 19)
const tapePixels = (forThumbs: boolean) => (forThumbs ? 48 : 27)

/** The height a ladder needs so that every label fits, for a page that can be scrolled. */
export function leastLadderHeight(prediction: Prediction, forThumbs: boolean): number {
  const rows = areaRows(prediction, forThumbs).length * rowPixels(forThumbs)
  const whites = new Set(prediction.lights.map((light) => light.gel.name)).size + 1
  const tapes = prediction.lights.length * tapePixels(forThumbs) + whites * WHITE_LABEL_PIXELS
  return Math.max(rows, tapes) + 2 * MARGIN_PIXELS
}

/** Where everything on the ladder goes. */
export function ladderLayout(prediction: Prediction, room: LadderRoom): LadderLayout {
  const scale = ladderScale(room.heightPixels, MARGIN_PIXELS)
  const rows = areaRows(prediction, room.forThumbs)
  const whites = whiteLines(prediction)
  const lights = prediction.lights

  const areaHeights = spread(
    rows.map(({ area }) => ({ stops: area.meter.stops, heightPixels: rowPixels(room.forThumbs) })),
    scale,
    room.heightPixels,
  )
  const rightHeights = spread(
    [
      ...whites.map(({ stops }) => ({ stops, heightPixels: WHITE_LABEL_PIXELS })),
      ...lights.map((light) => ({ stops: light.level.stops, heightPixels: tapePixels(room.forThumbs) })),
    ],
    scale,
    room.heightPixels,
  )
  return {
    scale,
    columns: ladderColumns(room.widthPixels),
    areas: rows.map((row, i) => hang(row, row.area.meter.stops, areaHeights[i], scale)),
    whites: whites.map((line, i) => hang(line, line.stops, rightHeights[i], scale)),
    lights: lights.map((light, i) => hang(light, light.level.stops, rightHeights[whites.length + i], scale)),
  }
}

function ladderColumns(widthPixels: number): LadderColumns {
  const leader = widthPixels < 300 ? 14 : 26
  const tapeWidth = Math.min(112, Math.max(76, widthPixels * 0.28))
  const tapeLeft = widthPixels - tapeWidth - 4
  const rulerRight = tapeLeft - leader
  return { widthPixels, rulerLeft: rulerRight - RULER_PIXELS, rulerRight, patchRight: rulerRight - RULER_PIXELS - leader, tapeLeft, tapeWidth }
}

interface Wanted {
  readonly stops: number | null
  readonly heightPixels: number
}

function spread(labels: readonly Wanted[], scale: LadderScale, heightPixels: number): readonly number[] {
  return spreadLabels(
    labels.map((label) => ({ wantedPixels: heightOf(scale, label.stops), heightPixels: label.heightPixels })),
    2,
    heightPixels - 2,
  )
}

function hang<Thing>(thing: Thing, stops: number | null, labelPixels: number | undefined, scale: LadderScale): Hung<Thing> {
  const truePixels = heightOf(scale, stops)
  return { thing, truePixels, labelPixels: labelPixels ?? truePixels, pinned: pinnedAt(stops) }
}

/** All areas on a desk; for thumbs those that are seen or served, the background's corners as one: the one with least light. */
function areaRows({ areas, background, lights }: Prediction, forThumbs: boolean): readonly AreaRow[] {
  const named = (area: AreaPrediction) => ({ area, name: shortAreaName(area, background.behind) })
  if (!forThumbs) return areas.map(named)
  const isCorner = (area: AreaPrediction) => /^background-(top|bottom)-/.test(area.id)
  const [darkest] = areas.filter((area) => isCorner(area) && area.inFrame).sort((a, b) => (a.meter.stops ?? -99) - (b.meter.stops ?? -99))
  const others = areas.filter((area) => !isCorner(area) && (area.inFrame || lights.some(({ serves }) => serves === area.id))).map(named)
  return darkest ? [...others, { area: darkest, name: 'corners from' }] : others
}
