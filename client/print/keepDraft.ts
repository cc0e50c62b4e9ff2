import type { Board } from '../session/board.ts'
import type { NotesBoard } from '../notes/engine/notesBoard.ts'
import type { LookToPrint } from './gather.ts'
import { momentWords } from './usePrintable.ts'

/**
 * Has the relay keep the plan of a printed draft, so that a scan can compare with it. One print keeps one state, and a
 * state that is kept already is not kept twice. Without a network nothing is kept: what arrives later would be another plan.
 */
export function keepDraft(printed: readonly LookToPrint[], { connection }: Pick<Board, 'connection'>, { kept, send }: Pick<NotesBoard, 'kept' | 'send'>): void {
  const draft = printed.find(({ state }) => state.lockNumber === null)
  if (draft === undefined || connection.state !== 'live') return
  const isKept = [...Object.values(kept.thatOnes), ...Object.values(kept.locks)].some(({ planHash }) => planHash === draft.state.planHash)
  if (!isKept) send({ do: 'that-one', lookId: draft.lookId, words: `Printed ${momentWords(Date.now())}` })
}
