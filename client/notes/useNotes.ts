import { createContext, use, useMemo } from 'react'
import { useStore } from 'zustand'
import { useBoardStore } from '../session/useBoard.ts'
import { ballotsOf, type BallotView } from './engine/ballots.ts'
import { keptOf } from './engine/keptThings.ts'
import { locksOf, type LockView } from './engine/locks.ts'
import type { NotesBoard } from './engine/notesBoard.ts'
import type { NotesStore } from './engine/notesStore.ts'
import { createReopening, type Reopening } from './engine/reopen.ts'
import { threadsOf, type Thread } from './engine/threads.ts'
import { unreadOf, type Unread } from './engine/unread.ts'

/** The notes of the job that the page is showing. */
export const NotesContext = createContext<NotesStore | null>(null)

/** The store itself, for handlers: `notes.getState().send(draft)`. Throws outside a job. */
export function useNotesStore(): NotesStore {
  const store = use(NotesContext)
  if (store === null) throw new Error('useNotes is for components inside an open job')
  return store
}

/** What a component draws of the notes; it draws again only when that part changes. Select single fields, as with `useBoard`. */
export function useNotes<Part>(selector: (notes: NotesBoard) => Part): Part {
  return useStore(useNotesStore(), selector)
}

/** All notes with what was said under them; a change elsewhere (a stroke, a vote) makes none anew. */
export function useThreads(): readonly Thread[] {
  const notes = useNotes((board) => board.notes)
  const { seatId } = useNotes((board) => board.seat)
  const { notes: written, replies, noteStates, seen } = notes
  // eslint-disable-next-line react-hooks/exhaustive-deps -- these four groups are all that threads are made of
  return useMemo(() => threadsOf(notes, seatId), [written, replies, noteStates, seen, seatId])
}

export function useBallots(): readonly BallotView[] {
  const notes = useNotes((board) => board.notes)
  const ownVotes = useNotes((board) => board.ownVotes)
  const seat = useNotes((board) => board.seat)
  return useMemo(() => ballotsOf(notes, ownVotes, seat), [notes, ownVotes, seat])
}

/** The latest first, as the relay wrote them and nothing else: nobody has said yes before the relay has it. */
export function useLocks(): readonly LockView[] {
  const kept = useNotes((board) => board.kept)
  const { seatId } = useNotes((board) => board.seat)
  return useMemo(() => locksOf(kept, seatId), [kept, seatId])
}

export function useUnread(): Unread {
  const notes = useNotes((board) => board.notes)
  const { seatId } = useNotes((board) => board.seat)
  return useMemo(() => unreadOf(notes, seatId), [notes, seatId])
}

/** Looking again at what was meant or locked; `useBoard((board) => board.reopened)` says what is looked at. */
export function useReopening(): Reopening {
  const board = useBoardStore()
  const notes = useNotesStore()
  return useMemo(() => createReopening(board, notes, keptOf(notes.getState().seat.seatId)), [board, notes])
}
