import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { Board } from '../../session/board.ts'

/** The plan the Frame shows: what it was before while that is asked for, else the one with everybody's hands on it. */
export function planInFrame({ shown, before, seesBefore, beforeOfAnother, lookId }: Pick<Board, 'shown' | 'before' | 'seesBefore' | 'beforeOfAnother' | 'lookId'>): Plan {
  const then = beforeOfAnother?.plan ?? before
  return seesBefore && then?.looks[lookId] !== undefined ? then : shown
}
