import { useEffect, useState } from 'react'
import { useBoard, useBoardStore } from '../../session/useBoard.ts'
import { leaderOf } from './leaderOf.ts'
import './call.css'

/** Follows the view of whom one looks with, says so, and leaves or comes back with one touch. It never edits. */
export function LookWithLine() {
  const board = useBoardStore()
  const seatId = useBoard((state) => state.looksWith)
  const people = useBoard((state) => state.people)
  const lookWith = useBoard((state) => state.lookWith)
  const [last, setLast] = useState<{ readonly seatId: string; readonly name: string } | null>(null)
  const ownSeatId = people.find(({ isSelf }) => isSelf)?.seatId ?? ''
  const leader = seatId === null ? null : leaderOf(people, seatId, ownSeatId)
  const named = seatId === null ? null : (people.find((person) => person.seatId === seatId)?.name ?? last?.name ?? 'they')
  const { lookId = null, selection = null, sees = null } = leader ?? {}

  useEffect(() => {
    if (sees === null || lookId === null) return
    const now = board.getState()
    if (now.lookId !== lookId) now.showLook(lookId)
    now.select(selection)
    if (now.soloLightId !== sees.soloLightId) now.solo(sees.soloLightId)
    if (now.seesBefore !== sees.before) now.seeBefore(sees.before)
    if (now.frameView !== sees.view) now.lookAs(sees.view)
  }, [board, lookId, selection, sees])

  // Known while it lasts, to be offered again after.
  if (seatId !== null && named !== null && (last?.seatId !== seatId || last.name !== named)) setLast({ seatId, name: named })

  if (seatId !== null) {
    return (
      <div className="look-with" role="status">
        <p>{leader === null ? `${named} does not lead just now. You stay where you were` : `You look with ${named}`}</p>
        <button type="button" className="button" onClick={() => lookWith(null)}>Stop</button>
      </div>
    )
  }
  if (last === null) return null
  const isHere = people.some((person) => person.seatId === last.seatId)
  return (
    <div className="look-with" data-left>
      <p>You look on your own</p>
      {isHere && <button type="button" className="button" onClick={() => lookWith(last.seatId)}>Look with {last.name} again</button>}
      <button type="button" className="button" aria-label="Put this line away" onClick={() => setLast(null)}>Done</button>
    </div>
  )
}
