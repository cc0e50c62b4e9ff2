/** The formats that printers of the two worlds hold, in points of 1/72 inch (ISO 216; ANSI/ASME Y14.1). */
export const FORMATS = {
  a4: { name: 'A4', width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 },
  letter: { name: 'Letter', width: 8.5 * 72, height: 11 * 72 },
} as const
export type FormatId = keyof typeof FORMATS

export const POINTS_PER_METRE = 72 / 0.0254
export const POINTS_PER_MILLIMETRE = 72 / 25.4

export type Weight = 'regular' | 'bold'
export type PaperPoint = readonly [x: number, y: number]

export interface PrintedPicture {
  readonly format: 'png' | 'jpeg'
  readonly bytes: Uint8Array
}

/** How ink lies on an area: 0 is black, 1 is bare paper. */
export type Grey = number

/** What is drawn, from the upper left corner in points; the baseline for text. */
export type Mark =
  | { readonly kind: 'text'; readonly text: string; readonly x: number; readonly y: number; readonly size: number; readonly weight: Weight; readonly grey: Grey; readonly width: number }
  | { readonly kind: 'path'; readonly points: readonly PaperPoint[]; readonly closed: boolean; readonly stroke: Grey | null; readonly strokeWidth: number; readonly fill: Grey | null; readonly dash: readonly number[] }
  | { readonly kind: 'squares'; readonly squares: readonly { readonly x: number; readonly y: number; readonly width: number; readonly height: number }[] }
  /** What follows is drawn inside the box alone, until the clip ends. */
  | { readonly kind: 'clip'; readonly x: number; readonly y: number; readonly width: number; readonly height: number }
  | { readonly kind: 'clip-end' }
  | { readonly kind: 'picture'; readonly picture: PrintedPicture; readonly x: number; readonly y: number; readonly width: number; readonly height: number }

/** What a page needs to know of its letters. */
export interface Letters {
  widthOf(text: string, size: number, weight: Weight): number
  /** The text with what the letters do not have replaced by a mark that is seen. */
  printable(text: string): string
}

interface TextStyle {
  readonly size: number
  readonly weight?: Weight
  readonly grey?: Grey
  readonly align?: 'left' | 'right' | 'centre'
}

/** One page, drawn on. */
export class Paper {
  readonly marks: Mark[] = []

  constructor(readonly width: number, readonly height: number, readonly letters: Letters) {}

  /** One line with its baseline at `y`; shortened with an ellipsis past `most`. Its width. */
  text(words: string, x: number, y: number, { size, weight = 'regular', grey = 0, align = 'left' }: TextStyle, most = Infinity): number {
    const text = this.fitted(words, size, weight, most)
    if (text === '') return 0
    const width = this.letters.widthOf(text, size, weight)
    const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2
    this.marks.push({ kind: 'text', text, x: left, y, size, weight, grey, width })
    return width
  }

  /** Lines of at most `width`, the first baseline one size below `y`. Gives the y below the last. */
  paragraph(words: string, x: number, y: number, width: number, style: TextStyle, leading = 1.3): number {
    let below = y
    for (const line of this.lines(words, width, style)) {
      this.text(line, style.align === 'centre' ? x + width / 2 : x, below + style.size, style)
      below += style.size * leading
    }
    return below
  }

  /** The height that `paragraph` takes. */
  heightOf(words: string, width: number, style: TextStyle, leading = 1.3): number {
    return this.lines(words, width, style).length * style.size * leading
  }

  lines(words: string, width: number, { size, weight = 'regular' }: TextStyle): readonly string[] {
    const fits = (text: string): boolean => this.letters.widthOf(text, size, weight) <= width
    const lines: string[] = []
    let line = ''
    for (const word of this.letters.printable(words).split(/\s+/).filter((one) => one !== '')) {
      for (const part of pieces(word, fits)) {
        const longer = line === '' ? part : `${line} ${part}`
        if (line === '' || fits(longer)) line = longer
        else {
          lines.push(line)
          line = part
        }
      }
    }
    return line === '' ? lines : [...lines, line]
  }

  line(points: readonly PaperPoint[], strokeWidth = 0.6, stroke: Grey = 0, dash: readonly number[] = []): void {
    this.marks.push({ kind: 'path', points, closed: false, stroke, strokeWidth, fill: null, dash })
  }

  area(points: readonly PaperPoint[], fill: Grey | null, stroke: Grey | null = 0, strokeWidth = 0.6): void {
    this.marks.push({ kind: 'path', points, closed: true, stroke, strokeWidth, fill, dash: [] })
  }

  box(x: number, y: number, width: number, height: number, fill: Grey | null, stroke: Grey | null = 0, strokeWidth = 0.6): void {
    this.area([[x, y], [x + width, y], [x + width, y + height], [x, y + height]], fill, stroke, strokeWidth)
  }

  /** Draws inside a box alone. */
  within(x: number, y: number, width: number, height: number, draw: () => void): void {
    this.marks.push({ kind: 'clip', x, y, width, height })
    draw()
    this.marks.push({ kind: 'clip-end' })
  }

  picture(picture: PrintedPicture, x: number, y: number, width: number, height: number): void {
    this.marks.push({ kind: 'picture', picture, x, y, width, height })
  }

  private fitted(words: string, size: number, weight: Weight, most: number): string {
    const text = this.letters.printable(words)
    if (this.letters.widthOf(text, size, weight) <= most) return text
    let short = text
    while (short !== '' && this.letters.widthOf(`${short}…`, size, weight) > most) short = short.slice(0, -1)
    return `${short.trimEnd()}…`
  }
}

/** A word that is wider than its line is cut into such as fit. */
function pieces(word: string, fits: (text: string) => boolean): string[] {
  if (fits(word)) return [word]
  const parts: string[] = []
  let part = ''
  for (const letter of word) {
    if (part !== '' && !fits(part + letter)) {
      parts.push(part)
      part = ''
    }
    part += letter
  }
  return [...parts, part]
}
