import { signedStops } from '../../ladder/areaNames.ts'
import { clippedInWords } from '../clipping.ts'
import type { Reading } from '../picture/reading.ts'

/** One light's part of a place, as it is written. */
export interface LitBy {
  /** Its letter, or "room". */
  readonly letter: string
  readonly percent: number
  /** Its gel on white; null where the light is clear, or the room's own. */
  readonly gelHex: string | null
}

export function levelInWords({ stopsOverGrey }: Reading): string {
  return stopsOverGrey === null ? 'dark' : `${signedStops(stopsOverGrey)} from mid-grey`
}

/** All of a reading in one sentence, for those who listen. */
export function readingInWords(reading: Reading, litBy: readonly LitBy[]): string {
  const who = litBy.filter(({ percent }) => percent > 0).map(({ letter, percent }) => `${letter} ${percent} %`)
  return `${levelInWords(reading)}, ${reading.words}${clippedInWords(reading.clipped)}.${who.length === 0 ? '' : ` Lit by ${who.join(', ')}.`}`
}
