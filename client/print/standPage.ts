import { HEAD, SIDE, type Book } from './book.ts'
import type { FloorBox } from './floorDrawing.ts'
import type { Paper } from './paper.ts'
import type { PrintedLook } from './printJob.ts'

const NUMBER_SIZE = 26
/** Letter is 18 mm shorter than A4: a stand has to go on one page of either. */
const SHORT_PAGE = 820
const VALUE_WIDTH = 178
const WRITE_WIDTH = 128
const GAP = 14

type Columns = readonly (readonly [title: string, lines: readonly string[], swatch?: (paper: Paper, x: number, y: number) => void])[]

/** A page about one stand, filled from the top; what does not fit goes on to a further page with the same frame. */
export class StandPage {
  #paper: Paper
  #y = HEAD

  constructor(readonly book: Book, readonly of: PrintedLook, readonly what: string) {
    this.#paper = book.page(of, what)
  }

  get #isShort(): boolean {
    return this.#paper.height < SHORT_PAGE
  }

  /** Of one number. */
  get #row(): number {
    return this.#isShort ? 29.5 : 33.5
  }

  get #right(): number {
    return this.#paper.width - SIDE
  }

  #need(height: number): void {
    if (this.#y + height <= this.#paper.height - HEAD) return
    this.#paper = this.book.page(this.of, `${this.what}, more`)
    this.#y = HEAD + 4
  }

  /** Its letter as on tape, what it is for, and where it stands. */
  title(letter: string, words: string, more: string, draw: (paper: Paper, box: FloorBox) => void): void {
    const paper = this.#paper
    const box = { x: SIDE + VALUE_WIDTH + 20, y: this.#y, width: this.#right - SIDE - VALUE_WIDTH - 20, height: this.#isShort ? 146 : 176 }
    paper.box(box.x, box.y, box.width, box.height, null, 0, 0.6)
    draw(paper, { x: box.x + 2, y: box.y + 2, width: box.width - 4, height: box.height - 4 })
    const isLetter = letter.length <= 2
    const height = isLetter ? 76 : 40
    paper.box(SIDE, this.#y, isLetter ? 76 : VALUE_WIDTH, height, 1, 0, 2.4)
    if (isLetter) paper.text(letter, SIDE + 38, this.#y + 58, { size: 56, weight: 'bold', align: 'centre' }, 80)
    else paper.text(letter, SIDE + VALUE_WIDTH / 2, this.#y + 26, { size: 17, weight: 'bold', align: 'centre' }, VALUE_WIDTH - 10)
    let y = this.#y + height + 12
    y = paper.paragraph(capital(words), SIDE, y, VALUE_WIDTH, { size: 15, weight: 'bold' }, 1.15)
    y = paper.paragraph(more, SIDE, y + 3, VALUE_WIDTH, { size: 10.5 }, 1.2)
    this.#y = Math.max(y, box.y + box.height) + 8
    this.#tableHead()
  }

  #tableHead(): void {
    const paper = this.#paper
    paper.text('As planned', SIDE, this.#y + 8, { size: 8, weight: 'bold' })
    paper.text('As built', this.#right - WRITE_WIDTH, this.#y + 8, { size: 8, weight: 'bold' })
    this.#y += 12
    paper.line([[SIDE, this.#y], [this.#right, this.#y]], 1.2)
  }

  /** A number as it is read at arm's length, what it is, and room to write how it came out. */
  number(value: string, words: string, write = ''): void {
    const row = this.#row
    this.#need(row)
    const paper = this.#paper
    const size = shrunk(paper, value, NUMBER_SIZE, VALUE_WIDTH - 6)
    paper.text(value, SIDE, this.#y + row / 2 + size * 0.35, { size, weight: 'bold' }, VALUE_WIDTH - 4)
    const room = this.#right - SIDE - VALUE_WIDTH - WRITE_WIDTH - 16
    const style = { size: 10.5 }
    const height = paper.heightOf(words, room, style, 1.15)
    const small = height > row - 2 ? { size: 8.5 } : style
    paper.paragraph(words, SIDE + VALUE_WIDTH + 4, this.#y + (row - paper.heightOf(words, room, small, 1.15)) / 2, room, small, 1.15)
    const write0 = this.#right - WRITE_WIDTH
    paper.line([[write0, this.#y + row - 8], [this.#right, this.#y + row - 8]], 0.7, 0, [1, 2])
    paper.text(write, write0, this.#y + row - 11, { size: 7.5 })
    this.#y += row
    paper.line([[SIDE, this.#y], [this.#right, this.#y]], 0.4, 0.55)
  }

  /** A line that belongs to the numbers above it. */
  under(words: string): void {
    const height = this.#paper.heightOf(words, this.#right - SIDE, { size: 10.5, weight: 'bold' }) + 7
    this.#need(height)
    this.#paper.paragraph(words, SIDE, this.#y + 3, this.#right - SIDE, { size: 10.5, weight: 'bold' })
    this.#y += height
    this.#paper.line([[SIDE, this.#y], [this.#right, this.#y]], 0.4, 0.55)
  }

  /** Short facts side by side, two in a row. */
  columns(columns: Columns): void {
    const width = (this.#right - SIDE - GAP) / 2
    for (let i = 0; i < columns.length; i += 2) {
      const row = columns.slice(i, i + 2)
      const heightOf = (lines: readonly string[]): number => lines.reduce((sum, line) => sum + this.#paper.heightOf(line, width, { size: 9.5 }, 1.25), 22)
      const height = Math.max(...row.map(([, lines]) => heightOf(lines)))
      this.#need(height)
      row.forEach(([title, lines, swatch], j) => {
        const x = SIDE + j * (width + GAP)
        this.#paper.text(title, x, this.#y + 15, { size: 9, weight: 'bold' }, width)
        swatch?.(this.#paper, x + this.#paper.letters.widthOf(title, 9, 'bold') + 6, this.#y + 6)
        let y = this.#y + 18
        for (const line of lines) y = this.#paper.paragraph(line, x, y, width, { size: 9.5 }, 1.25)
      })
      this.#y += height
    }
  }

  /** One sentence under its title. */
  say(title: string, words: string, loud = false): void {
    const style = { size: loud ? 11 : 9.5, weight: loud ? 'bold' : 'regular' } as const
    const room = this.#right - SIDE - 86
    const height = Math.max(16, this.#paper.heightOf(words, room, style, 1.2)) + 6
    this.#need(height)
    this.#paper.line([[SIDE, this.#y + 1], [this.#right, this.#y + 1]], 0.4, 0.55)
    this.#paper.text(title, SIDE, this.#y + 14, { size: 9, weight: 'bold' }, 80)
    this.#paper.paragraph(words, SIDE + 86, this.#y + 3, room, style, 1.2)
    this.#y += height
  }

  /** The usual care, boxed. */
  care(messages: readonly string[]): void {
    if (messages.length === 0) return
    const width = this.#right - SIDE - 16
    const style = { size: 8 }
    const height = messages.reduce((sum, message) => sum + this.#paper.heightOf(message, width - 10, style, 1.2) + 2, 20)
    this.#need(height + 6)
    this.#paper.box(SIDE, this.#y + 4, this.#right - SIDE, height, null, 0, 1)
    this.#paper.text('The usual care', SIDE + 8, this.#y + 16, { size: 9, weight: 'bold' })
    let y = this.#y + 19
    for (const message of messages) {
      this.#paper.text('–', SIDE + 8, y + style.size, style)
      y = this.#paper.paragraph(message, SIDE + 18, y, width - 10, style, 1.2) + 2
    }
    this.#y += height + 8
  }

  /** Ruled room to write, down to the foot of the page. */
  asBuilt(): void {
    const bottom = this.#paper.height - HEAD - 4
    if (bottom - this.#y < 34) return
    this.#paper.text('As built, by, at:', SIDE, this.#y + 14, { size: 9, weight: 'bold' })
    for (let y = this.#y + 34; y <= bottom; y += 20) this.#paper.line([[SIDE, y], [this.#right, y]], 0.5, 0.4, [1, 2])
  }
}

function shrunk(paper: Paper, text: string, size: number, most: number): number {
  const width = paper.letters.widthOf(paper.letters.printable(text), size, 'bold')
  return width <= most ? size : Math.max(12, (size * most) / width)
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
