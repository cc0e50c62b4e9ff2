import { useEffect } from 'react'
import { useBoard, useBoardStore } from '../../session/useBoard.ts'
import { leadsRing } from './leaderOf.ts'

/** Somebody who reloads is away for a moment and has not left. */
const GONE_AFTER_MS = 4_000

/** Why a person looks on their own again without having asked to. */
export type Released = 'left' | 'ring'

/** Lets go of whom one looks with where they have left, and where people who look with each other would wait for ever. */
export function useRelease(onReleased: (why: Released) => void): void {
  const board = useBoardStore()
  const seatId = useBoard((state) => state.looksWith)
  const isLive = useBoard((state) => state.connection.state === 'live')
  const isHere = useBoard((state) => state.people.some((person) => person.seatId === seatId))
  const isRingLed = useBoard(({ people }) => seatId !== null && leadsRing(people, seatId, people.find(({ isSelf }) => isSelf)?.seatId ?? ''))

  useEffect(() => {
    if (seatId === null || !isLive || isHere) return
    const timer = setTimeout(() => {
      board.getState().lookWith(null)
      onReleased('left')
    }, GONE_AFTER_MS)
    return () => clearTimeout(timer)
  }, [board, seatId, isLive, isHere, onReleased])

  useEffect(() => {
    if (!isRingLed) return
    board.getState().lookWith(null)
    onReleased('ring')
  }, [board, isRingLed, onReleased])
}
