import type { Lock, ThatOne } from '../../../shared-core/notes/entries.ts'
import type { Board } from '../../session/board.ts'
import { keptPlan, type FetchKept } from './keptThings.ts'

/**
 * Shows on the board the exact plan that somebody meant or locked, read-only; `board.reopen(null)` goes back. Resolves
 * with null once it is shown, or with the words on why it cannot be.
 */
export async function reopenKept(
  board: Pick<Board, 'reopen'>, kept: Pick<ThatOne, 'planHash' | 'lookId'>, words: string, fetchKept: FetchKept,
): Promise<string | null> {
  const plan = await keptPlan(kept.planHash, fetchKept)
  if (!plan.ok) return plan.words
  if (plan.value.looks[kept.lookId] === undefined) return 'The look that was meant is not in the plan that was kept.'
  board.reopen({ plan: plan.value, lookId: kept.lookId, words })
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
