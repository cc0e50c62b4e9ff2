import { useEffect, useState } from 'react'
import { causesOf, type Cause } from '../../shared-core/meter/causes.ts'
import type { Judged, Learned } from '../../shared-core/meter/learn.ts'
import { useBoardStore } from '../session/useBoard.ts'

/** The likeliest causes of a reading that does not fit; null until they were tried, after the page has drawn. */
export function useCauses(learned: Learned, judged: Judged | undefined): readonly Cause[] | null {
  const board = useBoardStore()
  const [found, setFound] = useState<{ readonly of: Judged; readonly causes: readonly Cause[] } | null>(null)
  useEffect(() => {
    if (judged?.state !== 'held-back') return
    const timer = setTimeout(() => setFound({ of: judged, causes: causesOf(board.getState().plan, learned, judged) }), 30)
    return () => clearTimeout(timer)
  }, [board, learned, judged])
  return found !== null && found.of === judged ? found.causes : null
}
