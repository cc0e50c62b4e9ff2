import { useDeferredValue, useMemo } from 'react'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { lookChange, type LookChange, type ScheduledMove } from '../../shared-core/stands/lookChange.ts'
import { readingsAgain, type ReadingAgain } from '../../shared-core/stands/moves/readingsAgain.ts'
import { moveTickKey, type MoveTick } from '../../shared-core/rig/moves.ts'
import { useRig, useRigStore } from '../rig/useRig.ts'
import { useBoard } from '../session/useBoard.ts'

export interface LookChangeNow {
  readonly change: LookChange
  readonly readings: readonly ReadingAgain[]
  /** A move's tick, whoever made it; one of another wording was made before the plan moved. */
  readonly tickOf: (moveId: string) => MoveTick | undefined
  readonly tick: (move: ScheduledMove, done: boolean) => void
}

/** What a tick keeps of its move, to tell whether the plan still asks for the same. */
export function saidOf({ words }: Pick<ScheduledMove, 'words'>): string {
  return words.join('; ').slice(0, 2_000)
}

/** The change between two looks of the job; null where one of them is gone. */
export function useLookChange(fromId: string, toId: string): LookChangeNow | null {
  const plan = useDeferredValue(useBoard((board) => board.plan))
  const units = useBoard((board) => board.units)
  const ticks = useRig(({ rig }) => rig.moves)
  const store = useRigStore()
  const predictor = useMemo(() => createPredictor(), [])
  const found = useMemo(() => {
    if (plan.looks[fromId] === undefined || plan.looks[toId] === undefined) return null
    const change = lookChange(plan, fromId, toId, units)
    return { change, readings: readingsAgain(predictor(plan, fromId), predictor(plan, toId), change.lights, change.moves) }
  }, [plan, fromId, toId, units, predictor])
  return found === null ? null : {
    ...found,
    tickOf: (moveId) => ticks[moveTickKey(fromId, toId, moveId)],
    tick(move, done) {
      const { write, writtenBy } = store.getState()
      write([{ kind: 'moves', key: moveTickKey(fromId, toId, move.id), entry: done ? { fromId, toId, said: saidOf(move), by: writtenBy() } : null }])
    },
  }
}
