import { useCallback, useEffect, useRef, useState } from 'react'
import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import { useBoardStore } from '../session/useBoard.ts'

/** One of several answers, laid over the board to be looked at, and written or left. */
export interface Preview {
  /** Key of what is looked at; null for the board as it stands. */
  readonly seen: string | null
  /** Looks at it; at what is seen already, leaves it. */
  look(key: string, edit: PlanEdit): void
  /** Writes it: one edit, one undo. */
  apply(edit: PlanEdit): void
  leave(): void
  /** Forgets what is looked at, without touching the board: somebody else's edit lies over it now. */
  giveWay(): void
}

export function usePreview(): Preview {
  const store = useBoardStore()
  const [seen, setSeen] = useState<string | null>(null)
  const isHolding = useRef(false)
  const leave = useCallback(() => {
    if (isHolding.current) store.getState().hold(null)
    isHolding.current = false
    setSeen(null)
  }, [store])
  const giveWay = useCallback(() => {
    isHolding.current = false
    setSeen(null)
  }, [])
  useEffect(() => leave, [leave])
  return {
    seen,
    look(key, edit) {
      if (seen === key) return leave()
      isHolding.current = true
      setSeen(key)
      store.getState().hold(edit)
    },
    apply(edit) {
      leave()
      store.getState().edit(edit)
    },
    leave,
    giveWay,
  }
}
