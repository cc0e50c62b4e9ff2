import { useNotes } from '../useNotes.ts'
import { ColourChanged } from './ColourChanged.tsx'
import type { NumberedThread } from './noteOrder.ts'
import { usePencil } from './pencilStore.ts'
import { usePinWords } from './usePinWords.ts'

interface NoteRowProps {
  readonly thread: NumberedThread
  readonly isNew: boolean
  /** Of another look than the one shown; null for a note of this one. */
  readonly lookName: string | null
  readonly onRead: () => void
}

/** A note in the list: what it says, who and where, and how it stands. */
export function NoteRow({ thread, isNew, lookName, onRead }: NoteRowProps) {
  const { id, note, number, state, replies } = thread
  const isHidden = usePencil(({ hiddenIds }) => hiddenIds.has(id))
  const isOnTheWay = useNotes(({ onTheWayIds }) => onTheWayIds.has(id))
  const wordsOf = usePinWords()
  const facts = [
    note.by.name, wordsOf(note.pin, note.lookId), lookName,
    isHidden && lookName === null ? 'behind' : null,
    replies.length === 0 ? null : replies.length === 1 ? '1 reply' : `${replies.length} replies`,
    state === 'open' ? null : state,
    isOnTheWay ? 'on its way' : null,
  ].filter((fact) => fact !== null)
  return (
    <button type="button" className="note-row" data-note={id} data-new={isNew} onClick={onRead}>
      <span className="note-row-mark note-mark" data-new={isNew} data-state={state} aria-hidden><span className="note-mark-face">{number}</span></span>
      <span className="note-row-words">
        <span className="note-row-text"><span className="heard">{`Note ${number}. `}</span>{isNew && <b className="note-row-new">Unread </b>}{note.text}</span>
        <span className="note-row-facts">{facts.join(' · ')}</span>
        <ColourChanged thread={thread} />
      </span>
    </button>
  )
}
