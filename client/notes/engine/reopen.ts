import type { Lock, ThatOne } from '../../../shared-core/notes/entries.ts'
import type { Board, KeptThing } from '../../session/board.ts'
import { keptPlan, type FetchKept } from './keptThings.ts'
import type { NotesBoard } from './notesBoard.ts'

/** Looking again at what was meant or locked. */
export interface Reopening {
  /** Shows what a "that one" holds; resolves with null, or with words on why it cannot be shown. */
  thatOne(id: string): Promise<string | null>
  /** Shows what a lock holds, likewise. */
  lock(id: string): Promise<string | null>
  /** Back to the shared plan. */
  leave(): void
}

interface Reading<Value> {
  getState(): Value
}

/** What arrives after something else was asked for, or after leaving, is not shown any more. */
export function createReopening(
  board: Reading<Pick<Board, 'reopen'>>, notes: Reading<Pick<NotesBoard, 'notes' | 'seat'>>, fetchKept: FetchKept,
): Reopening {
  let asked = 0
  function show(kept: Pick<ThatOne, 'planHash' | 'lookId'>, words: string, thing: KeptThing): Promise<string | null> {
    const own = ++asked
    return reopenKept({ reopen: (found) => void (own === asked && board.getState().reopen(found)) }, kept, words, thing, fetchKept)
  }
  return {
    async thatOne(id) {
      const one = notes.getState().notes.thatOnes[id]
      return one === undefined ? 'That is not there.' : show(one, wordsOfThatOne(one, notes.getState().seat.seatId), { kind: 'that-one', id })
    },
    async lock(id) {
      const lock = notes.getState().notes.locks[id]
      return lock === undefined ? 'That lock is not there.' : show(lock, wordsOfLock(lock), { kind: 'lock', id })
    },
    leave() {
      asked += 1
      board.getState().reopen(null)
    },
  }
}

/**
 * Shows on the board the exact plan that somebody meant or locked, read-only; `board.reopen(null)` goes back. Resolves
 * with null once it is shown, or with the words on why it cannot be.
 */
export async function reopenKept(
  board: Pick<Board, 'reopen'>, kept: Pick<ThatOne, 'planHash' | 'lookId'>, words: string, thing: KeptThing, fetchKept: FetchKept,
): Promise<string | null> {
  const plan = await keptPlan(kept.planHash, fetchKept)
  if (!plan.ok) return plan.words
  if (plan.value.looks[kept.lookId] === undefined) return 'The look that was meant is not in the plan that was kept.'
  board.reopen({ plan: plan.value, lookId: kept.lookId, words, kept: thing })
  return null
}

/** To follow "You are looking at". */
export function wordsOfThatOne({ by, lookName }: ThatOne, ownSeatId: string): string {
  return `${lookName} as ${by.seatId === ownSeatId ? 'you' : by.name} meant it`
}

/** To follow "You are looking at". */
export function wordsOfLock({ number, lookName }: Lock): string {
  return `lock ${number}, ${lookName}`
}
