import { useMemo } from 'react'
import type { Thread } from '../engine/threads.ts'
import './ColourChanged.css'
import { usePencil } from './pencilStore.ts'
import { colourChange, pinnedColour } from './reread.ts'

/** Asks to re-read a note whose colour is visibly not what it was written about. */
export function ColourChanged({ thread: { id, note, state } }: { readonly thread: Thread }) {
  const now = usePencil(({ coloursNow }) => coloursNow[id])
  const was = pinnedColour(note)
  const change = useMemo(() => (was === null || now === undefined || state === 'closed' ? null : colourChange(was, now)), [was, now, state])
  if (change === null) return null
  return (
    <span className="colour-changed">
      Its colour has changed since: was
      <span className="colour-changed-swatch" style={{ background: change.was }} title={change.was} />
      is
      <span className="colour-changed-swatch" style={{ background: change.is }} title={change.is} />
    </span>
  )
}
