import { useMemo } from 'react'
import { useBoard } from '../../session/useBoard.ts'
import { isPinnedTo, type PinnedThing } from '../engine/threads.ts'
import { NoteMark } from './NoteMark.tsx'
import type { NumberedThread } from './noteOrder.ts'
import './PinnedMarks.css'
import { useNoteList } from './useNoteList.ts'

/** The notes that hang on one thing of the shown look; closed ones with nothing new are left out. */
export function usePinnedTo(of: PinnedThing['on'], id: string): readonly { readonly thread: NumberedThread; readonly isNew: boolean }[] {
  const { threads, isNew } = useNoteList()
  const lookId = useBoard((board) => board.lookId)
  return useMemo(() => threads
    .filter(({ note }) => note.lookId === lookId && isPinnedTo(note.pin, { on: of, id } as PinnedThing))
    .map((thread) => ({ thread, isNew: isNew(thread) }))
    .filter(({ thread, isNew: fresh }) => fresh || thread.state !== 'closed'), [threads, isNew, lookId, of, id])
}

/** Their marks in a row. */
export function PinnedMarks({ of, id, className = '' }: { readonly of: PinnedThing['on']; readonly id: string; readonly className?: string }) {
  const pinned = usePinnedTo(of, id)
  if (pinned.length === 0) return null
  return (
    <span className={`pinned-marks ${className}`}>
      {pinned.map(({ thread, isNew }) => <NoteMark key={thread.id} thread={thread} isNew={isNew} />)}
    </span>
  )
}
