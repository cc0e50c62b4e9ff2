import { WEDGE_STEPS } from '../../../shared-core/notes/screenCheck.ts'

/** A patch with a mark on it that differs a little. Colours as sRGB code values; nothing here is pure white. */
export interface MarkedPatch {
  readonly ground: string
  readonly mark: string
  /** How many steps are told apart by who sees this mark as the faintest. */
  readonly steps: number
}

/** Code values between two steps of the wedge: about what a good screen just shows near black. Common practice, no source. */
const CODE_STEP = 2
const LIGHT_END = 250

/** From the plainest mark to the faintest. */
export const darkWedge: readonly MarkedPatch[] = wedge((code) => grey(code), () => grey(0))
export const lightWedge: readonly MarkedPatch[] = wedge((code) => grey(LIGHT_END - code), () => grey(LIGHT_END))

/** Around the violets that gels make, from blue to red: even steps of OKLCH hue, of one lightness and strength. */
export const hueRow: readonly string[] = Array.from({ length: 8 }, (_, i) => `oklch(56% 0.12 ${268 + 12 * i})`)
/** The order in which they are dealt: no two neighbours of the row lie side by side. */
export const dealt: readonly number[] = [4, 1, 6, 3, 0, 5, 2, 7]

function wedge(mark: (code: number) => string, ground: () => string): readonly MarkedPatch[] {
  return Array.from({ length: WEDGE_STEPS }, (_, i) => ({ ground: ground(), mark: mark(CODE_STEP * (WEDGE_STEPS - i)), steps: i + 1 }))
}

function grey(code: number): string {
  return `rgb(${code} ${code} ${code})`
}
