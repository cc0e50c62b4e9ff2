import { pictureHeight } from '../../shared-core/predict/pictureText.ts'
import type { LightPrediction } from '../../shared-core/predict/prediction.ts'
import { HEAD, SIDE, type Book } from './book.ts'
import type { Paper } from './paper.ts'
import type { PrintedLook } from './printJob.ts'

/** Beneath the Frame; more would leave the Frame no room. */
const BENEATH_THE_FRAME = 8
const WORDS = 14
const NO_PICTURE = 'No picture could be drawn here.'
/** On a page of their own. */
const ACROSS = 4
const GAP = 12

/** The Frame, and the first lights alone beneath it, as large as the room they are given lets them be. */
export function lookPictures(paper: Paper, of: PrintedLook, lights: readonly LightPrediction[], x: number, y: number, width: number, room: number): void {
  const share = heightShare(of)
  const columns = Math.min(4, Math.max(2, lights.length))
  const rows = Math.ceil(Math.min(BENEATH_THE_FRAME, lights.length) / columns)
  const each = (width - (columns - 1) * 4) / columns
  const eachHeight = each * Math.min(share, 1.3)
  const height = Math.min(width * share, room - rows * (eachHeight + WORDS))
  const frameWidth = height / share
  if (of.frame === null) paper.paragraph(NO_PICTURE, x + 6, y + 6, width - 12, { size: 9 })
  else paper.picture(of.frame, x, y, frameWidth, height)
  paper.box(x, y, of.frame === null ? width : frameWidth, height, null, 0, 0.6)
  lights.slice(0, BENEATH_THE_FRAME).forEach((light, i) => {
    single(paper, of, light, x + (i % columns) * (each + 4), y + height + 6 + Math.floor(i / columns) * (eachHeight + WORDS), each, eachHeight)
  })
}

/** The Singles that found no room beneath the Frame, larger, on as many pages as they need. */
export function furtherSingles(book: Book, of: PrintedLook, lights: readonly LightPrediction[]): void {
  const left = lights.slice(BENEATH_THE_FRAME)
  const top = HEAD + 4
  for (let done = 0; done < left.length;) {
    const paper = book.page(of, 'Look, more Singles')
    const width = (paper.width - 2 * SIDE - (ACROSS - 1) * GAP) / ACROSS
    const row = width * heightShare(of) + WORDS
    const most = ACROSS * Math.max(1, Math.floor((paper.height - HEAD - top) / row))
    left.slice(done, done + most).forEach((light, i) => {
      single(paper, of, light, SIDE + (i % ACROSS) * (width + GAP), top + Math.floor(i / ACROSS) * row, width, row - WORDS)
    })
    done += most
  }
}

function single(paper: Paper, of: PrintedLook, { id, letter }: LightPrediction, x: number, y: number, width: number, height: number): void {
  const share = heightShare(of)
  const picture = of.singles[id]
  const pictureWidth = Math.min(width, height / share)
  if (picture !== undefined) paper.picture(picture, x + (width - pictureWidth) / 2, y, pictureWidth, pictureWidth * share)
  paper.box(x, y, width, height, null, 0.3, 0.4)
  paper.text(`${letter} alone`, x + width / 2, y + height + 9, { size: 7.5, weight: 'bold', align: 'centre' }, width)
}

function heightShare({ look }: PrintedLook): number {
  return pictureHeight(look, 1_000) / 1_000
}
