import { useEffect, useRef, useState } from 'react'
import { phone, useMedia } from '../../shell/useMedia.ts'
import { NOTES_LIMITS } from '../../../shared-core/notes/limits.ts'
import { useNotesStore } from '../useNotes.ts'
import './NoteComposer.css'
import { leaveNote, usePencil, type NoteBegun } from './pencilStore.ts'
import { useKeydown } from './useKeydown.ts'
import { usePinWords } from './usePinWords.ts'

/** The note being written, near where it was pressed; on a phone over the keyboard. */
export function NoteComposer() {
  const begun = usePencil((state) => state.begun)
  return begun === null ? null : <Composer key={JSON.stringify(begun.pin)} begun={begun} />
}

const WIDTH_PIXELS = 288
const HEIGHT_PIXELS = 170
const GAP_PIXELS = 14

function Composer({ begun }: { readonly begun: NoteBegun }) {
  const notes = useNotesStore()
  const wordsOf = usePinWords()
  const onPhone = useMedia(phone)
  const composer = useRef<HTMLDivElement>(null)
  const field = useRef<HTMLTextAreaElement>(null)
  const [text, setText] = useState('')
  const where = wordsOf(begun.pin, begun.lookId)

  const { byKeys } = begun
  useEffect(() => {
    const before = document.activeElement
    field.current?.focus({ preventScroll: true })
    return () => {
      if (byKeys && (before instanceof HTMLElement || before instanceof SVGElement)) before.focus({ preventScroll: true })
    }
  }, [byKeys])

  function pin(): void {
    const { lookId, colour } = begun
    const isSaid = notes.getState().send({ do: 'note.add', lookId, pin: begun.pin, text, ...(colour === null ? {} : { colour }) })
    if (isSaid !== null) leaveNote()
  }

  useKeydown(composer, (event) => {
    if (event.key === 'Escape') {
      event.preventDefault()
      event.stopPropagation()
      leaveNote()
    } else if (event.key === 'Enter' && !event.shiftKey && !event.isComposing && event.target === field.current) {
      event.preventDefault()
      pin()
    }
  })

  return (
    <div
      ref={composer}
      role="dialog"
      aria-label={`Note on ${where}`}
      className="note-composer"
      data-pencil-own
      style={onPhone ? undefined : placeBeside(begun)}
    >
      <p className="note-composer-where">
        {begun.colour !== null && <span className="note-swatch" style={{ background: begun.colour }} aria-hidden />}
        <span>{where}</span>
      </p>
      <textarea
        ref={field}
        className="note-field"
        aria-label={`Note on ${where}`}
        rows={3}
        maxLength={NOTES_LIMITS.textCharacters}
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <div className="note-composer-actions">
        <button type="button" className="button" onClick={leaveNote}>Leave</button>
        <button type="button" className="button button-main" aria-disabled={text.trim() === ''} onClick={pin}>Pin it</button>
      </div>
    </div>
  )
}

/** To the right of the place, where there is room; never over it. */
function placeBeside({ clientX, clientY }: NoteBegun): { left: number; top: number; width: number } {
  const right = clientX + GAP_PIXELS
  const left = right + WIDTH_PIXELS < innerWidth - 8 ? right : Math.max(8, clientX - GAP_PIXELS - WIDTH_PIXELS)
  return { left, top: Math.min(Math.max(8, clientY - 24), Math.max(8, innerHeight - HEIGHT_PIXELS - 8)), width: WIDTH_PIXELS }
}
