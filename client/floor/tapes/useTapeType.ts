import { useLayoutEffect, useState, type RefObject } from 'react'
import { createMeasure, type MeasureText } from './tapeSizes.ts'

export interface TapeType {
  readonly measure: MeasureText
  readonly lineHeight: number
}

/** Before the page can be asked: any width will do, nothing is drawn yet. */
const BEFORE: TapeType = { measure: (text) => text.length * 7, lineHeight: 14 }

/** The type that tapes are set in, read from the style sheet once the panel stands in the page, and again when fonts come in. */
export function useTapeType(element: RefObject<HTMLElement | null>): TapeType {
  const [type, setType] = useState(BEFORE)
  useLayoutEffect(() => {
    const read = (): void => {
      if (element.current === null) return
      const style = getComputedStyle(element.current)
      const pixels = (name: string) => Number.parseFloat(style.getPropertyValue(name))
      setType({
        measure: createMeasure(style.fontFamily, pixels('--floor-text'), pixels('--floor-letter')),
        lineHeight: pixels('--floor-line'),
      })
    }
    read()
    let here = true
    void document.fonts.ready.then(() => here && read())
    return () => {
      here = false
    }
  }, [element])
  return type
}
