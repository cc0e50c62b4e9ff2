import { useBoard } from '../../session/useBoard.ts'
import { isPinnedTo, type PinnedThing } from '../engine/threads.ts'
import { NoteMark } from './NoteMark.tsx'
import type { NumberedThread } from './noteOrder.ts'
import './PinnedMarks.css'
import { useNoteList, type NotesRead } from './useNoteList.ts'

/** The notes of a look that hang on one thing; closed ones with nothing new are left out. */
export function pinnedTo({ threads, isNew }: NotesRead, lookId: string, thing: PinnedThing): readonly NumberedThread[] {
  return threads.filter((thread) => {
    const { lookId: ofLook, pin } = thread.note
    // What is said of a light's gel is said at the light.
    const isGelOfLight = thing.on === 'light' && pin.on === 'gel' && pin.lightId === thing.id
    return ofLook === lookId && (isGelOfLight || isPinnedTo(pin, thing)) && (thread.state !== 'closed' || isNew(thread))
  })
}

/** The marks of a light's notes in a row. */
export function PinnedMarks({ lightId, className = '' }: { readonly lightId: string; readonly className?: string }) {
  const notes = useNoteList()
  const lookId = useBoard((board) => board.lookId)
  const pinned = pinnedTo(notes, lookId, { on: 'light', id: lightId })
  if (pinned.length === 0) return null
  return (
    <span className={`pinned-marks ${className}`}>
      {pinned.map((thread) => <NoteMark key={thread.id} thread={thread} isNew={notes.isNew(thread)} />)}
    </span>
  )
}
