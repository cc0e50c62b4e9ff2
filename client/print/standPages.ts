import { gridWords } from '../../shared-core/ask/lightChangeWords.ts'
import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { formatSize } from '../../shared-core/plan/entry/size.ts'
import type { CautionKind } from '../../shared-core/predict/caution.ts'
import { marksOf, type Taped } from '../../shared-core/stands/marks.ts'
import { standsOf, type LightStand, type PieceStand, type Stand } from '../../shared-core/stands/stand.ts'
import { aimWords, airGapWords, cutWords, facingWords, frontName } from '../../shared-core/stands/standWords.ts'
import type { Book } from './book.ts'
import { drawFloor, gelOrder } from './floorDrawing.ts'
import { hatchOf } from './hatch.ts'
import { hatchSwatch } from './hatchSwatch.ts'
import type { PrintedLook } from './printJob.ts'
import { readingWords } from './readingWords.ts'
import { StandPage } from './standPage.ts'

/** The marks, then one page a stand in the order in which they are built. */
export function standPages(book: Book, of: PrintedLook): void {
  marksPage(book, of)
  for (const stand of standsOf(of.plan, of.lookId, of.prediction)) {
    if (stand.kind === 'light') lightPage(book, of, stand)
    else piecePage(book, of, stand)
  }
}

function lightPage(book: Book, of: PrintedLook, stand: LightStand): void {
  const { units } = book.job
  const { light, modifier, predicted } = stand
  const page = begin(book, of, stand, `Stand ${stand.name}`, light.plane.replace('-', ' '), `${modifier?.name ?? 'Bare head'} on ${stand.head?.name ?? 'a head that is not in the kit'}`)
  tapes(page, stand.taped, units, 'the middle of the front')
  page.number(formatLength(stand.heightMetres, units), 'floor to the centre of the front')
  if (stand.frontToMetres !== null) page.number(formatLength(stand.frontToMetres, units), `front of the ${frontName(stand)} to the ${stand.frontTo}`)
  page.number(predicted?.powerText ?? `${Math.round(light.energyJoules)} Ws`, `power on the head’s panel, ${light.energyJoules >= 100 ? Math.round(light.energyJoules) : light.energyJoules.toPrecision(2)} Ws`)
  if (predicted !== null && predicted.level.fullFNumber !== null) {
    page.number(readingWords(predicted.level), `reads alone, f-number and tenths: dome at the ${stand.frontTo}, pointed at ${stand.name}, ± ${predicted.plusMinusStops.toFixed(1)} stop`, 'read')
  }
  const trigger = of.triggers[stand.name]
  page.columns([
    ['Modifier', [
      `${modifier?.name ?? 'No modifier'}${modifier === null ? '' : `, ${formatSize(modifier.widthMetres, modifier.heightMetres, units)}`}`,
      light.grid.kind === 'none' ? 'No grid' : gridWords(light.grid),
      ...(Math.abs(light.rollDegrees) >= 1 ? [`Rolled ${Math.round(light.rollDegrees)}°`] : []),
    ]],
    ['Gel', stand.gels.length === 0 ? ['Clear: no gel'] : [
      ...stand.gels.map((one) => [one.gel.name, cutWords(one, units)].filter(Boolean).join(', ')),
      `${light.gelPlace === 'at-the-head' ? 'At the head, all of the tube covered.' : 'Over the whole front.'} ${airGapWords(units)}`,
    ], (paper, x, y) => {
      const gelId = light.gelIds.at(-1)
      if (gelId !== undefined) hatchSwatch(paper, x, y, 11, hatchOf(gelOrder(of).indexOf(gelId)))
    }],
    ['Aim and stand', [
      aimWords(stand.aimed, units),
      `On a ${light.support.replace('-', ' ')}${light.sandbag ? ', sandbag on the leg under the load' : ''}${light.safetyCable ? ', safety cable' : ''}.`,
    ]],
    ['Trigger and plug', [
      `Group ${blank(trigger?.group)}, channel ${blank(trigger?.channel)}`,
      stand.head?.supply === 'battery' ? 'On its battery.' : `Plug: ${stand.circuit ?? blank('')}`,
    ]],
  ])
  const matters = of.matters[stand.id]
  if (matters !== undefined && matters.length > 0) page.say('What matters', `${matters.slice(0, 4).join(', ')}.`, true)
  if (light.note !== '') page.say('Note', light.note)
  page.care(ownCare(stand))
  page.asBuilt()
}

function piecePage(book: Book, of: PrintedLook, stand: PieceStand): void {
  const { units } = book.job
  const { piece } = stand
  const isFlat = piece.kind === 'v-flat'
  const page = begin(book, of, stand, stand.name, piece.kind.replace('v-flat', 'V-flat'), formatSize(piece.widthMetres, piece.heightMetres, units))
  tapes(page, stand.taped, units, isFlat ? 'the hinge' : 'its middle')
  if (!isFlat) page.number(formatLength(stand.heightMetres, units), 'floor to its centre')
  page.columns([
    ['Faces', [facingWords(piece.facingDegrees, piece.tiltDegrees), ...(isFlat ? [`Opened to ${Math.round(piece.openDegrees)}°.`] : [])]],
    ['What it is', [
      `${capital(piece.kind.replace('v-flat', 'V-flat'))}, ${formatSize(piece.widthMetres, piece.heightMetres, units)}${isFlat ? ' a panel' : ''}.`,
      ...(piece.kind === 'scrim' ? [`Lets ${Math.round(100 * piece.transmittance)} % through.`] : []),
    ]],
  ])
  page.care(ownCare(stand).length > 0 ? ownCare(stand) : ['A tall or top-heavy stand wants a sandbag; nothing over people without its safety cable.'])
  page.asBuilt()
}

function marksPage(book: Book, of: PrintedLook): void {
  const { units } = book.job
  const { plan: { room }, look: { camera, subject, backdrop }, prediction } = of
  const length = (metres: number): string => formatLength(metres, units)
  const side = (metres: number): string => (Math.abs(metres) < 0.005 ? '' : `, ${length(Math.abs(metres))} to camera ${metres > 0 ? 'right' : 'left'}`)
  const page = new StandPage(book, of, 'Marks')
  page.title('T', 'first of all', 'The marks: T, camera, paper', (paper, box) => drawFloor(paper, of, box, { units }))
  page.number(length(room.markFromLeftWallMetres + subject.xMetres), 'the T, from the camera-left wall')
  page.number(length(room.markFromRearWallMetres - subject.yMetres), 'the T, from the rear wall')
  page.number(length(subject.yMetres - camera.place.yMetres), `camera, from the T towards its end of the room${side(camera.place.xMetres - subject.xMetres)}`)
  page.number(length(camera.place.zMetres), 'height of the lens')
  if (backdrop.kind === 'paper') {
    page.number(length(backdrop.yMetres - subject.yMetres), `paper, behind the T${side(backdrop.centreXMetres - subject.xMetres)}`)
    page.number(length(backdrop.topMetres), 'paper, floor to its top')
  }
  page.columns([
    ['Taped from', marksOf(of.plan, of.look).map(({ words }) => capital(words))],
    ['Lens', [`${Math.round(camera.focalLengthMillimetres)} mm. Tape the lens’s place on the floor: it is a mark that others are measured from.`]],
  ])
  page.care([...new Set(prediction.cautions.filter(({ kind }) => OF_ALL.includes(kind)).map(({ message }) => message)),
    'Ways out stay clear; cables along walls, taped where people walk.'])
  page.asBuilt()
}

function begin(book: Book, of: PrintedLook, stand: Stand, what: string, words: string, more: string): StandPage {
  const page = new StandPage(book, of, what)
  page.title(stand.name, words, more, (paper, box) => drawFloor(paper, of, box, { units: book.job.units, focus: { id: stand.id, taped: stand.taped } }))
  return page
}

function tapes(page: StandPage, { from, side }: Taped, units: Book['job']['units'], what: string): void {
  for (const { mark, floorMetres } of from) page.number(formatLength(floorMetres, units), `along the floor from ${mark.words}`)
  page.under(`To below ${what}${side === null ? ', on the line between both marks' : `, ${side}`}.`)
}

/** What is said once, with the marks. */
const OF_ALL: readonly CautionKind[] = ['circuit', 'capacitor', 'photosensitive']

function ownCare({ cautions }: Stand): readonly string[] {
  return cautions.filter(({ kind }) => !OF_ALL.includes(kind)).map(({ message }) => message)
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
const blank = (words: string | undefined): string => (words === undefined || words === '' ? '______' : words)
