import { useBallots, useNotesStore } from '../../notes/useNotes.ts'
import type { BallotView } from '../../notes/engine/ballots.ts'
import type { NotesDraft } from '../../notes/engine/draft.ts'

export interface BallotOnSheet {
  /** The latest on the looks that lie here; null where there is none. */
  readonly view: BallotView | null
  readonly send: (draft: NotesDraft) => void
}

/** The vote on the looks of this sheet: the latest that names any of them. */
export function useBallotHere(lookIds: readonly string[]): BallotOnSheet {
  const ballots = useBallots()
  const store = useNotesStore()
  const view = ballots.findLast(({ ballot }) => ballot.lookIds.some((id) => lookIds.includes(id))) ?? null
  return { view, send: (draft) => void store.getState().send(draft) }
}
