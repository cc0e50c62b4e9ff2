import { useCallback, useMemo } from 'react'
import { useNotes, useNotesStore, useThreads } from '../useNotes.ts'
import type { Thread } from '../engine/threads.ts'
import { seenUpTo } from '../engine/unread.ts'
import { noteList, numberedThreads, type NoteList, type NumberedThread } from './noteOrder.ts'
import { pencilStore, usePencil } from './pencilStore.ts'
import { isNewThread, lastOfOthers, mayBeSaidSeen, readUpToKept, type ReadUpTo } from './readNotes.ts'

export interface NotesRead {
  /** In the order they were written. */
  readonly threads: readonly NumberedThread[]
  readonly list: NoteList
  readonly newCount: number
  readonly isNew: (thread: Thread) => boolean
}

/** The notes of the job as this person sees them: numbered, in their list, and what of them is new. */
export function useNoteList(): NotesRead {
  const threads = useThreads()
  const { seatId } = useNotes((board) => board.seat)
  const readHere = usePencil(({ readOf }) => readOf[seatId])
  const read = useMemo(() => readHere ?? readUpToKept.of(seatId), [readHere, seatId])
  return useMemo(() => {
    const isNew = (thread: Thread): boolean => isNewThread(thread, seatId, read)
    return { threads: numberedThreads(threads), list: noteList(threads, isNew), newCount: threads.filter(isNew).length, isNew }
  }, [threads, seatId, read])
}

/** Says that this person has read a thread: kept on the device, and told to the relay as far as nothing is passed over. */
export function useMarkRead(): (thread: Thread) => void {
  const store = useNotesStore()
  return useCallback((thread) => {
    const { seat: { seatId }, kept, notes, send } = store.getState()
    const before: ReadUpTo = pencilStore.getState().readOf[seatId] ?? readUpToKept.of(seatId)
    const upTo = lastOfOthers(thread, seatId)
    if (upTo <= (before[thread.id] ?? 0)) return
    const read = { ...before, [thread.id]: upTo }
    pencilStore.setState(({ readOf }) => ({ readOf: { ...readOf, [seatId]: read } }))
    readUpToKept.keep(seatId, read)
    const seen = mayBeSaidSeen(kept, seatId, read)
    if (seen > seenUpTo(notes, seatId)) send({ do: 'seen', upTo: seen })
  }, [store])
}
