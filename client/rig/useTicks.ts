import { useCallback } from 'react'
import { builtAs } from '../../shared-core/stands/builtAs.ts'
import { tickKey, type Tick } from '../../shared-core/rig/ticks.ts'
import { useBoardStore } from '../session/useBoard.ts'
import { useRig, useRigStore } from './useRig.ts'

/** The tick of one stand of a look, by whoever built it; undefined while it is to be built. */
export function useTick(lookId: string, standId: string): Tick | undefined {
  return useRig(({ rig }) => rig.ticks[tickKey(lookId, standId)])
}

/** Ticks a stand as the plan has it now, or takes the tick back. */
export function useTickStand(): (lookId: string, standId: string, done: boolean) => void {
  const board = useBoardStore()
  const store = useRigStore()
  return useCallback((lookId, standId, done) => {
    const { write, writtenBy } = store.getState()
    const look = board.getState().plan.looks[lookId]
    const stand = look === undefined ? null : builtAs(look, standId)
    if (look === undefined || stand === null) return board.say('That stand is no longer in the look')
    const { xMetres, yMetres } = look.subject
    write([{
      kind: 'ticks', key: tickKey(lookId, standId),
      entry: done ? { lookId, by: writtenBy(), subjectXMetres: xMetres, subjectYMetres: yMetres, stand } : null,
    }])
  }, [board, store])
}
