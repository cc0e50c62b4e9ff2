import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { Board } from '../../session/board.ts'

/** The plan the Frame shows: what it was before while that is asked for, else the one with everybody's hands on it. */
export function planInFrame({ shown, before, seesBefore, lookId }: Pick<Board, 'shown' | 'before' | 'seesBefore' | 'lookId'>): Plan {
  return seesBefore && before?.looks[lookId] !== undefined ? before : shown
}
