import { signedStops } from '../ladder/areaNames.ts'
import { clippedInWords } from './clipping.ts'
import type { Reading } from './picture/reading.ts'

/** What the picture says under the pointer, in a line over its foot. */
export function ReadingLine({ reading }: { readonly reading: Reading | null }) {
  if (reading === null) return null
  return (
    <p className="frame-reading" aria-hidden>
      <span className="frame-reading-patch" style={{ background: reading.hex }} />
      {reading.stopsOverGrey === null ? 'dark' : `${signedStops(reading.stopsOverGrey)} from mid-grey`} · {reading.words}
      {clippedInWords(reading.clipped)}
    </p>
  )
}
