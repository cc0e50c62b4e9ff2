import { useEffect, useMemo, useRef, useState } from 'react'
import { lightsBehind, roomTogether, whiteEdit, type WhitePoint } from '../../../shared-core/ask/whitePoint.ts'
import { useBoardStore } from '../../session/useBoard.ts'
import { pushNow } from './curveShape.ts'

/** A hand on the trade between white and rim: shown on the board while it moves, written once when it lets go. */
export interface WhiteHand {
  /** Push from white in the hand; null when nothing is. */
  readonly inHand: number | null
  moveTo(push: number): void
  done(): void
  cancel(): void
}

/** @param curve of the plan on the board */
export function useWhiteHand(curve: readonly WhitePoint[]): WhiteHand {
  const store = useBoardStore()
  const latest = useRef(curve)
  useEffect(() => {
    latest.current = curve
  }, [curve])
  const held = useRef<number | null>(null)
  const [inHand, setInHand] = useState<number | null>(null)

  const hand = useMemo(() => {
    const editTo = (push: number) => {
      const { plan, lookId } = store.getState()
      const behind = lightsBehind(plan, lookId)
      const now = pushNow(latest.current)
      if (now === null || behind.length === 0) return null
      const room = roomTogether(behind)
      const stops = Math.min(Math.max(push - now, room.lowest), room.highest)
      return { push: now + stops, edit: whiteEdit(lookId, behind, stops, null) }
    }
    const letGo = () => {
      const last = held.current
      held.current = null
      setInHand(null)
      return last
    }
    return {
      moveTo(push: number) {
        const to = store.getState().mayEdit ? editTo(push) : null
        if (!to) return
        held.current = to.push
        setInHand(to.push)
        store.getState().hold(to.edit)
      },
      done() {
        const last = letGo()
        const to = last === null ? null : editTo(last)
        if (to) store.getState().edit(to.edit)
      },
      cancel() {
        if (letGo() !== null) store.getState().hold(null)
      },
    }
  }, [store])

  useEffect(() => hand.cancel, [hand])
  return { ...hand, inHand }
}
