import type { TapeText } from './tapeText.ts'

/** How a tape is set, in pixels; the style sheet gives the same figures. */
export const TAPE = { paddingX: 7, paddingY: 4, letterGap: 7, gel: 4, wordSpacing: 1 } as const

/** Width of a text in the tape's type; letters are larger and bold. */
export type MeasureText = (text: string, isLetter: boolean) => number

/** Measures with the type that the board is set in. Results are kept: the same few texts come again and again. */
export function createMeasure(fontFamily: string, fontPixels: number, letterPixels: number): MeasureText {
  const context = document.createElement('canvas').getContext('2d')
  const known = new Map<string, number>()
  return (text, isLetter) => {
    const key = `${isLetter ? 1 : 0}${text}`
    const before = known.get(key)
    if (before !== undefined) return before
    if (context === null) return text.length * fontPixels * 0.6
    context.font = isLetter ? `700 ${letterPixels}px ${fontFamily}` : `500 ${fontPixels}px ${fontFamily}`
    const spaces = text.split(' ').length - 1
    const width = context.measureText(text).width + spaces * TAPE.wordSpacing
    if (known.size > 2_000) known.clear()
    known.set(key, width)
    return width
  }
}

/** The size that a tape's text takes, in pixels. */
export function sizeOfTape(text: TapeText, measure: MeasureText, lineHeight: number): { width: number; height: number } {
  const lines = text.lines.filter((line) => line !== '')
  const widest = Math.max(0, ...lines.map((line) => measure(line, false)))
  const isTape = text.letter !== ''
  const letter = isTape ? measure(text.letter, true) + TAPE.letterGap + TAPE.gel : 0
  return {
    // Half a pixel of rounding at either end would wrap the last word.
    width: Math.ceil(widest + letter + 2 * TAPE.paddingX) + 2,
    height: Math.max(isTape ? 2 : 1, lines.length) * lineHeight + 2 * (isTape ? TAPE.paddingY : 2),
  }
}
