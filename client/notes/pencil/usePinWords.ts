import { useCallback } from 'react'
import { useBoard } from '../../session/useBoard.ts'
import type { Pin } from '../../../shared-core/notes/pin.ts'
import { pinWords } from './pinWords.ts'

/** Where a note of a look hangs, in words. */
export function usePinWords(): (pin: Pin, lookId: string) => string {
  const plan = useBoard((board) => board.plan)
  const areas = useBoard((board) => board.prediction.areas)
  const units = useBoard((board) => board.units)
  return useCallback((pin, lookId) => pinWords(pin, { plan, look: plan.looks[lookId], areas, units }), [plan, areas, units])
}
