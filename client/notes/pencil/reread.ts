import { colourDifference2000 } from '../../../shared-core/colour/difference.ts'
import type { Xyz } from '../../../shared-core/colour/triples.ts'
import type { Note } from '../../../shared-core/notes/entries.ts'
import { linearFromHex } from '../../../shared-core/spectra/srgb.ts'

/** A step between two colours that is just visible side by side (CIEDE2000); past it a note about a colour asks to be re-read. */
export const VISIBLE_STEPS = 1

/** The same for a place read off the picture, whose pixels are not the size of everybody's. */
const PLACE_STEPS = 2

/** A colour that is no longer what a note was written about. */
export interface ColourChange {
  /** `#rrggbb` */
  readonly was: string
  readonly is: string
  /** CIEDE2000 */
  readonly steps: number
}

/** Whether the colour has changed visibly since. @param was,is as a screen shows them, `#rrggbb` in sRGB */
export function colourChange(was: string, is: string): ColourChange | null {
  const steps = stepsBetween(was, is)
  return steps > VISIBLE_STEPS ? { was, is, steps } : null
}

function stepsBetween(one: string, other: string): number {
  return colourDifference2000(xyzOfHex(one), xyzOfHex(other))
}

/**
 * What a place shows now, to be held against what it showed: where a shadow's edge crosses a cheek the picture of another
 * camera has the same colour a pixel further, and one of another size nearly the same. So of the colours about the place one that
 * is still as it was, within two steps, is enough.
 * @param colours about the place, its own first
 */
export function colourAbout(was: string, colours: readonly string[]): string | null {
  return colours.some((colour) => stepsBetween(was, colour) <= PLACE_STEPS) ? was : (colours[0] ?? null)
}

/** The colour a note was written about; null for one that speaks of none. */
export function pinnedColour({ pin, colour }: Pick<Note, 'pin' | 'colour'>): string | null {
  return pin.on === 'colour' ? pin.hex : colour
}

/** From sRGB, IEC 61966-2-1: the matrix of its primaries and D65. */
function xyzOfHex(hex: string): Xyz {
  const [r, g, b] = linearFromHex(hex)
  return [
    0.4124 * r + 0.3576 * g + 0.1805 * b,
    0.2126 * r + 0.7152 * g + 0.0722 * b,
    0.0193 * r + 0.1192 * g + 0.9505 * b,
  ]
}
