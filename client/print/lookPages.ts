import { formatFNumber } from '../../shared-core/plan/entry/aperture.ts'
import { formatIso, formatKelvin, formatShutter } from '../../shared-core/plan/entry/camera.ts'
import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { formatStops } from '../../shared-core/plan/entry/stops.ts'
import type { LightPrediction } from '../../shared-core/predict/prediction.ts'
import { HEAD, SIDE, type Book } from './book.ts'
import { drawFloor, gelOrder } from './floorDrawing.ts'
import { hatchOf } from './hatch.ts'
import { hatchSwatch } from './hatchSwatch.ts'
import { furtherSingles, lookPictures } from './lookPictures.ts'
import type { Paper } from './paper.ts'
import type { PrintedLook } from './printJob.ts'
import { readingWords } from './readingWords.ts'

const GAP = 12
const ROW_LEAST = 27
const TABLE_HEAD = 12
/** About what camera, finish and agreement take, with the gaps. */
const FACTS_HEIGHT = 88
const LEAST_FLOOR = 290
const MOST_FLOOR = 400

/** The look on one page: picture, Singles, floor, camera, lights; more pages only where lights or Singles do not fit. */
export function lookPages(book: Book, of: PrintedLook): void {
  const paper = book.page(of, 'Look')
  const [left, right, foot] = [SIDE, paper.width - SIDE, paper.height - HEAD]
  const lights = of.prediction.lights.filter(({ on }) => on)
  const tableHeight = TABLE_HEAD + lights.reduce((sum, light) => sum + rowHeight(paper, lightWords(of, light)), 0)
  const spare = foot - HEAD - tableHeight - FACTS_HEIGHT
  const floorHeight = Math.min(MOST_FLOOR, Math.max(LEAST_FLOOR, spare))
  const pictureWidth = Math.min(200, 0.56 * floorHeight)
  lookPictures(paper, of, lights, left, HEAD, pictureWidth, floorHeight)
  const floorX = left + pictureWidth + GAP
  paper.box(floorX, HEAD, right - floorX, floorHeight, null, 0, 0.6)
  drawFloor(paper, of, { x: floorX + 2, y: HEAD + 2, width: right - floorX - 4, height: floorHeight - 4 }, { units: book.job.units })
  const below = facts(paper, of, left, right, HEAD + floorHeight + GAP, book)
  lightTable(book, of, lights, paper, below + GAP, foot)
  furtherSingles(book, of, lights)
}

/** Camera, finish, and what was agreed, side by side. Gives the y below the longest. */
function facts(paper: Paper, { look, prediction, state }: PrintedLook, left: number, right: number, y: number, book: Book): number {
  const { camera, finish, subject, backdrop } = look
  const columns: readonly (readonly [title: string, lines: readonly string[]])[] = [
    ['Camera', [
      `${formatFNumber(camera.fNumber)} · ${formatShutter(camera.shutterSeconds)} s · ${formatIso(camera.isoSpeed)}`.replace(' s s', ' s'),
      `${formatKelvin(camera.whiteBalanceKelvin)}${camera.whiteBalanceFixed ? ', fixed' : ', automatic: set it by hand'} · ${Math.round(camera.focalLengthMillimetres)} mm`,
      `Lens ${formatLength(camera.place.zMetres, book.job.units)} high, ${formatLength(prediction.framing.subjectDistanceMetres, book.job.units)} from the subject`,
    ]],
    ['Finish', [
      `Exposure ${formatStops(finish.exposureStops)}, contrast ${signed(finish.contrast)}`,
      `White point ${finish.whitePointStops < 0.05 ? 'as shot' : `pulled ${finish.whitePointStops.toFixed(1)} stop`}, black point ${(100 * finish.blackPoint).toFixed(1)} %`,
      `${subject.name === '' ? 'Subject' : subject.name}, ${subject.posture}; ${backdrop.kind === 'paper' ? `paper ${formatLength(backdrop.yMetres - subject.yMetres, book.job.units)} behind the T` : 'no paper: rear wall'}`,
    ]],
    [state.lockNumber === null ? 'Not agreed' : 'Agreed', state.words],
  ]
  const width = (right - left - 2 * GAP) / 3
  const ends = columns.map(([title, lines], i) => {
    const x = left + i * (width + GAP)
    paper.line([[x, y], [x + width, y]], 1)
    paper.text(title, x, y + 12, { size: 9, weight: 'bold' }, width)
    return lines.reduce((at, line) => paper.paragraph(line, x, at, width, { size: 8.5 }, 1.25), y + 15)
  })
  return Math.max(...ends)
}

const signed = (value: number): string => `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value).toFixed(2)}`

const COLUMNS = [
  { title: '', share: 0.065 }, { title: 'Light', share: 0.345 }, { title: 'Metered at', share: 0.145 }, { title: 'Wanted', share: 0.085 },
  { title: 'Alone, reads', share: 0.13 }, { title: 'Power', share: 0.12 }, { title: 'Read', share: 0.11 },
] as const

/** One row a light; on further pages where they do not fit. */
function lightTable(book: Book, of: PrintedLook, lights: readonly LightPrediction[], first: Paper, top: number, foot: number): void {
  let paper = first
  let y = tableHead(paper, top)
  for (const light of lights) {
    const words = lightWords(of, light)
    const height = rowHeight(paper, words)
    if (y + height > foot) {
      paper = book.page(of, 'Look, more lights')
      y = tableHead(paper, HEAD + 4)
    }
    tableRow(paper, of, light, words, y, height)
    y += height
  }
}

function rowHeight(paper: Paper, { what, at }: LightWords): number {
  const width = paper.width - 2 * SIDE
  const style = { size: 8.5 }
  return Math.max(ROW_LEAST, paper.heightOf(what, width * COLUMNS[1].share - 24, style, 1.2) + 7, paper.heightOf(at, width * COLUMNS[2].share - 6, style, 1.2) + 7)
}

function edges(paper: Paper): readonly number[] {
  const width = paper.width - 2 * SIDE
  let x = SIDE
  return [x, ...COLUMNS.map(({ share }) => (x += share * width))]
}

function tableHead(paper: Paper, y: number): number {
  const at = edges(paper)
  COLUMNS.forEach(({ title }, i) => paper.text(title, at[i]! + 4, y + 8, { size: 7.5, weight: 'bold' }, at[i + 1]! - at[i]! - 6))
  paper.line([[at[0]!, y + TABLE_HEAD], [at.at(-1)!, y + TABLE_HEAD]], 1)
  return y + TABLE_HEAD
}

interface LightWords {
  readonly what: string
  readonly at: string
}

function lightWords({ plan, look, prediction }: PrintedLook, { id, serves }: LightPrediction): LightWords {
  const light = look.lights[id]!
  const gels = light.gelIds.map((gelId) => plan.gels[gelId]?.name ?? gelId).join(' + ')
  const modifier = plan.modifiers[light.modifierId]?.name ?? 'bare head'
  const grid = light.grid.kind === 'none' ? '' : `, ${light.grid.kind} grid`
  return {
    what: `${modifier}${grid} · ${gels === '' ? 'clear' : `gel ${gels}`}`,
    at: prediction.areas.find((area) => area.id === serves)?.label ?? serves,
  }
}

function tableRow(paper: Paper, of: PrintedLook, light: LightPrediction, { what, at: area }: LightWords, y: number, height: number): void {
  const at = edges(paper)
  const baseline = y + 12.5
  const cell = (i: number, words: string, bold = false): void => {
    paper.text(words, at[i]! + 4, baseline, { size: 9, weight: bold ? 'bold' : 'regular' }, at[i + 1]! - at[i]! - 6)
  }
  paper.text(light.letter, (at[0]! + at[1]!) / 2, y + 18, { size: 16, weight: 'bold', align: 'centre' })
  const gelId = of.look.lights[light.id]!.gelIds.at(-1)
  if (gelId === undefined) paper.box(at[1]! + 4, y + 5, 12, 12, 1, 0, 0.6)
  else hatchSwatch(paper, at[1]! + 4, y + 5, 12, hatchOf(gelOrder(of).indexOf(gelId)))
  paper.paragraph(what, at[1]! + 21, y + 3, at[2]! - at[1]! - 24, { size: 8.5 }, 1.2)
  paper.paragraph(area, at[2]! + 4, y + 3, at[3]! - at[2]! - 6, { size: 8.5 }, 1.2)
  cell(3, light.wantedStops === null ? 'open' : formatStops(light.wantedStops), true)
  cell(4, readingWords(light.level), true)
  paper.text(light.level.stops === null ? '' : `${formatStops(light.level.stops)} ± ${light.plusMinusStops.toFixed(1)}`, at[4]! + 4, y + 22.5, { size: 7.5 }, at[5]! - at[4]! - 6)
  cell(5, light.powerText, true)
  paper.text(`${light.energyJoules >= 100 ? Math.round(light.energyJoules) : light.energyJoules.toPrecision(2)} Ws`, at[5]! + 4, y + 22.5, { size: 7.5 }, at[6]! - at[5]! - 6)
  paper.box(at[6]! + 2, y + 3, at[7]! - at[6]! - 2, height - 6, 1, 0.4, 0.5)
  paper.line([[at[0]!, y + height], [at.at(-1)!, y + height]], 0.4, 0.5)
}
