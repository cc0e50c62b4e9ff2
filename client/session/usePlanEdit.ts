import { useMemo } from 'react'
import type { EditResult } from '../../shared-core/plan/edits/changing.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { useBoardStore } from './useBoard.ts'

/** A named edit of the look on the board. */
export type MakeEdit = (plan: Plan, lookId: string) => EditResult

export interface PlanEditor {
  /** Writes the edit, or says in words why it cannot be made. True when it was written. */
  (make: MakeEdit): boolean
  /** Shows the edit while the hand is on it; null lets go. */
  hold(make: MakeEdit | null): void
}

/** Edits of the plan as it is when they are made, not when the panel was drawn. Every refusal is said. */
export function usePlanEdit(): PlanEditor {
  const store = useBoardStore()
  return useMemo(() => {
    const write = (make: MakeEdit): boolean => {
      const board = store.getState()
      const result = make(board.plan, board.lookId)
      board.hold(null)
      if (!result.ok) {
        store.say(result.message)
        return false
      }
      if (result.edit.changes.length === 0) return true
      board.edit(result.edit)
      return board.mayEdit
    }
    const hold = (make: MakeEdit | null): void => {
      const board = store.getState()
      const result = make?.(board.plan, board.lookId)
      board.hold(result?.ok ? result.edit : null)
    }
    return Object.assign(write, { hold })
  }, [store])
}
