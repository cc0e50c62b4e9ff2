import { builtIds, standDigest } from '../../shared-core/stands/standDigest.ts'
import { HASH_START_LENGTH, printAddress } from '../../shared-core/stands/printMark.ts'
import { FORMATS, Paper, POINTS_PER_MILLIMETRE, type Letters } from './paper.ts'
import type { PrintedLook, PrintedState, PrintJob } from './printJob.ts'
import { drawScanMark } from './scanMark.ts'

const MARK_SIZE = 24 * POINTS_PER_MILLIMETRE
/** Printers leave a rim of up to 6 mm bare; common practice, no source. */
const RIM = 6.5 * POINTS_PER_MILLIMETRE
const CAPTION_SIZE = 7
export const SIDE = 11 * POINTS_PER_MILLIMETRE
/** From the paper's edge to where a page's own content begins. */
export const HEAD = RIM + MARK_SIZE + CAPTION_SIZE + 8

interface OpenPage {
  readonly paper: Paper
  readonly of: PrintedLook
  /** "Look", "Stand B", "Marks" */
  readonly what: string
}

/** The pages in their order. Their frames are drawn last, when it is known how many there are. */
export class Book {
  readonly #pages: OpenPage[] = []

  constructor(readonly job: PrintJob, readonly letters: Letters) {}

  page(of: PrintedLook, what: string): Paper {
    const { width, height } = FORMATS[this.job.format]
    const paper = new Paper(width, height, this.letters)
    this.#pages.push({ paper, of, what })
    return paper
  }

  finished(): readonly Paper[] {
    this.#pages.forEach((page, i) => this.#frame(page, i + 1))
    return this.#pages.map(({ paper }) => paper)
  }

  /** Scan marks in the corners, each with its words; whose page it is above, and what it is a print of above and below. */
  #frame({ paper, of, what }: OpenPage, number: number): void {
    const { job } = this
    const total = this.#pages.length
    const address = job.origin + printAddress({
      jobId: job.jobId, lookId: of.lookId, page: number,
      lockNumber: of.state.lockNumber, planHashStart: of.state.planHash.slice(0, HASH_START_LENGTH),
      digests: builtIds(of.look).map((id) => standDigest(of.look, id)),
    })
    const [right, foot] = [paper.width - RIM - MARK_SIZE, paper.height - RIM - MARK_SIZE]
    const caption = `${shortState(of.state)} · ${number}/${total}`
    for (const x of [RIM, right]) {
      for (const y of [RIM, foot]) {
        drawScanMark(paper, address, x, y, MARK_SIZE)
        paper.text(caption, x + MARK_SIZE / 2, y === RIM ? RIM + MARK_SIZE + CAPTION_SIZE : foot - 3, { size: CAPTION_SIZE, weight: 'bold', align: 'centre' }, MARK_SIZE)
      }
    }
    const left = RIM + MARK_SIZE + 6
    const room = right - left - 6
    drawState(paper, of.state, left, RIM + 8, room)
    paper.text(job.jobTitle, left, RIM + 46, { size: 10 }, room)
    const pageWords = `${what} · page ${number} of ${total}`
    const pageWidth = paper.text(pageWords, left + room, RIM + 61, { size: 10, align: 'right' }, room / 2)
    paper.text(of.look.name, left, RIM + 61, { size: 13, weight: 'bold' }, room - pageWidth - 10)

    const middle = left + room / 2
    paper.text('Scan any corner: it says what differs now from this page.', middle, foot + 20, { size: 9, weight: 'bold', align: 'centre' }, room)
    paper.text(`${stateWords(of.state)} · ${what} · page ${number} of ${total}`, middle, foot + 34, { size: 9, align: 'centre' }, room)
    paper.text(`Printed ${job.printedWords}`, middle, foot + 46, { size: 8, align: 'centre' }, room)
    paper.text('A plan, not a measurement. Manuals, the studio’s rules and local code come first.', middle, foot + 58, { size: 8, align: 'centre' }, room)
  }
}

/** "LOCK 2", "DRAFT 3f9c2a": for a corner. */
function shortState({ lockNumber, planHash }: PrintedState): string {
  return lockNumber === null ? `DRAFT ${planHash.slice(0, 6)}`.trimEnd() : `LOCK ${lockNumber}`
}

/** "Lock 2", "Draft, not locked, plan 3f9c2a" */
export function stateWords({ lockNumber, planHash }: PrintedState): string {
  const plan = planHash === '' ? '' : `, plan ${planHash.slice(0, 6)}`
  return lockNumber === null ? `Draft, not locked${plan}` : `Lock ${lockNumber}${plan}`
}

/** The largest words on the page: white on black for a lock, hollow for a draft. */
function drawState(paper: Paper, state: PrintedState, x: number, y: number, room: number): void {
  const isLock = state.lockNumber !== null
  const size = 17
  const words = isLock ? `LOCK ${state.lockNumber}` : 'DRAFT, not locked'
  const width = paper.letters.widthOf(words, size, 'bold') + 16
  paper.box(x, y, width, 24, isLock ? 0 : 1, 0, 1.4)
  paper.text(words, x + 8, y + 18, { size, weight: 'bold', grey: isLock ? 1 : 0 })
  const plan = state.planHash === '' ? '' : `plan ${state.planHash.slice(0, 6)}`
  paper.text(plan, x + width + 8, y + 17, { size: 9 }, room - width - 8)
}
