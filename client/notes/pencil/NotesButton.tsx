import { hideNotes, showNotes, usePencil } from './pencilStore.ts'
import './NotesButton.css'
import { useNoteList } from './useNoteList.ts'

interface NotesButtonProps {
  readonly className?: string
  readonly onOpened?: () => void
}

/** Opens the list of notes; says how many are new to this person. */
export function NotesButton({ className = '', onOpened }: NotesButtonProps) {
  const listShown = usePencil((state) => state.listShown)
  const { newCount } = useNoteList()
  return (
    <button
      type="button"
      className={`button notes-button ${className}`}
      data-pencil-own
      aria-expanded={listShown}
      aria-controls="notes-sheet"
      onClick={() => {
        if (listShown) return hideNotes()
        showNotes()
        onOpened?.()
      }}
    >
      Notes
      {newCount > 0 && <span className="notes-button-count">{newCount}<span className="heard"> unread</span></span>}
    </button>
  )
}
