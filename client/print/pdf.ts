import fontkit from '@pdf-lib/fontkit'
import {
  clip, closePath, concatTransformationMatrix, endPath, fill, lineTo, moveTo, PDFDocument, popGraphicsState, pushGraphicsState, rectangle, rgb, setDashPattern,
  setFillingRgbColor, setLineCap, setLineJoin, setLineWidth, setStrokingRgbColor, stroke, fillAndStroke, LineCapStyle, LineJoinStyle,
  PDFNumber, type PDFFont, type PDFImage, type PDFOperator, type PDFPage,
} from 'pdf-lib'
import type { Letters, Mark, Paper, PrintedPicture, Weight } from './paper.ts'

export interface FontFiles {
  readonly regular: Uint8Array
  readonly bold: Uint8Array
}

/** Stands for a letter that the fonts do not have: Unicode's own replacement character. */
const UNKNOWN_LETTER = '\ufffd'

export interface Press {
  readonly letters: Letters
  /** The pages as a PDF file. */
  print(papers: readonly Paper[], title: string): Promise<Uint8Array>
}

/** A PDF in the making: its letters measure the pages before they are drawn. */
export async function openPress(files: FontFiles): Promise<Press> {
  const document = await PDFDocument.create()
  document.registerFontkit(fontkit)
  const fonts: Record<Weight, PDFFont> = {
    regular: await document.embedFont(files.regular, { subset: true, features: { liga: false } }),
    bold: await document.embedFont(files.bold, { subset: true, features: { liga: false } }),
  }
  const known = new Set(fonts.regular.getCharacterSet())
  const letters: Letters = {
    widthOf: (text, size, weight) => fonts[weight].widthOfTextAtSize(text, size),
    printable: (text) => Array.from(text.normalize('NFC'), (letter) => (known.has(letter.codePointAt(0)!) ? letter : /\s/.test(letter) ? ' ' : UNKNOWN_LETTER)).join(''),
  }
  async function print(papers: readonly Paper[], title: string): Promise<Uint8Array> {
    document.setTitle(title, { showInWindowTitleBar: true })
    document.setProducer('Halfstop')
    document.setCreator('Halfstop')
    const images = new Map<PrintedPicture, PDFImage>()
    for (const paper of papers) {
      const page = document.addPage([paper.width, paper.height])
      for (const mark of paper.marks) {
        if (mark.kind !== 'picture') drawMark(page, paper.height, mark, fonts)
        else {
          const { picture } = mark
          const image = images.get(picture) ?? await (picture.format === 'png' ? document.embedPng(picture.bytes) : document.embedJpg(picture.bytes))
          images.set(picture, image)
          page.drawImage(image, { x: mark.x, y: paper.height - mark.y - mark.height, width: mark.width, height: mark.height })
        }
      }
    }
    return document.save()
  }
  return { letters, print }
}

function drawMark(page: PDFPage, height: number, mark: Exclude<Mark, { kind: 'picture' }>, fonts: Record<Weight, PDFFont>): void {
  switch (mark.kind) {
    case 'text':
      page.drawText(mark.text, { x: mark.x, y: height - mark.y, size: mark.size, font: fonts[mark.weight], color: rgb(mark.grey, mark.grey, mark.grey) })
      return
    case 'clip':
      page.pushOperators(pushGraphicsState(), rectangle(mark.x, height - mark.y - mark.height, mark.width, mark.height), clip(), endPath())
      return
    case 'clip-end':
      page.pushOperators(popGraphicsState())
      return
    case 'squares':
      page.pushOperators(
        pushGraphicsState(), upsideDown(height), setFillingRgbColor(0, 0, 0),
        ...mark.squares.map((one) => rectangle(one.x, one.y, one.width, one.height)), fill(), popGraphicsState(),
      )
      return
    case 'path': {
      const [first, ...rest] = mark.points
      if (first === undefined) return
      const operators: PDFOperator[] = [
        pushGraphicsState(), upsideDown(height), setLineWidth(mark.strokeWidth), setLineCap(LineCapStyle.Butt), setLineJoin(LineJoinStyle.Round),
      ]
      if (mark.dash.length > 0) operators.push(setDashPattern([...mark.dash], 0))
      if (mark.fill !== null) operators.push(setFillingRgbColor(mark.fill, mark.fill, mark.fill))
      if (mark.stroke !== null) operators.push(setStrokingRgbColor(mark.stroke, mark.stroke, mark.stroke))
      operators.push(moveTo(...first), ...rest.map((point) => lineTo(...point)))
      if (mark.closed) operators.push(closePath())
      operators.push(mark.fill === null ? stroke() : mark.stroke === null ? fill() : fillAndStroke(), popGraphicsState())
      page.pushOperators(...operators)
    }
  }
}

/** A page counts from its foot, our marks from its head. */
function upsideDown(height: number): PDFOperator {
  return concatTransformationMatrix(PDFNumber.of(1), PDFNumber.of(0), PDFNumber.of(0), PDFNumber.of(-1), PDFNumber.of(0), PDFNumber.of(height))
}
