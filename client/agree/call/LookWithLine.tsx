import { useEffect, useState } from 'react'
import { SHARED_PAGES } from '../../session/board.ts'
import { ask, useAsking } from '../../session/pageStore.ts'
import { useBoard } from '../../session/useBoard.ts'
import { leaderOf } from './leaderOf.ts'
import { PAGE_WORDS } from './pageWords.ts'
import { useFollowing } from './useFollowing.ts'
import { useRelease, type Released } from './useRelease.ts'
import './call.css'

/** Follows the view of whom one looks with, says so, and leaves or comes back with one touch. It never edits. */
export function LookWithLine() {
  const seatId = useBoard((state) => state.looksWith)
  const people = useBoard((state) => state.people)
  const lookWith = useBoard((state) => state.lookWith)
  const [last, setLast] = useState<{ readonly seatId: string; readonly name: string } | null>(null)
  const [released, setReleased] = useState<Released | null>(null)
  const ownSeatId = people.find(({ isSelf }) => isSelf)?.seatId ?? ''
  const leader = seatId === null ? null : leaderOf(people, seatId, ownSeatId)
  const named = seatId === null ? null : (people.find((person) => person.seatId === seatId)?.name ?? last?.name ?? 'they')
  const ownPage = useOwnPage()
  const isBeforeUnknown = useFollowing(leader)
  useRelease(setReleased)

  // Known while it lasts, to be offered again after.
  if (seatId !== null && named !== null && (last?.seatId !== seatId || last.name !== named)) {
    setLast({ seatId, name: named })
    setReleased(null)
  }

  if (seatId !== null) {
    const page = leader?.sees.page ?? null
    return (
      <div className="look-with" role="status">
        <p>
          {leader === null ? `${named} does not lead just now. You stay where you were` : `You look with ${named}`}
          {isBeforeUnknown && `. ${leader!.name} looks at it as it was before you came, which this page has not seen`}
          {page !== null && `. ${leader!.name} has ${PAGE_WORDS[page]}`}
        </p>
        {page !== null && page !== ownPage && <button type="button" className="button" onClick={() => ask({ kind: page })}>Open it here</button>}
        <button type="button" className="button" onClick={() => lookWith(null)}>Stop</button>
      </div>
    )
  }
  if (last === null) return null
  const isHere = people.some((person) => person.seatId === last.seatId)
  return (
    <div className="look-with" data-left role="status">
      <p>{released === 'left' && !isHere ? `${last.name} has left. You look on your own` : released === 'ring' ? `${last.name} looks with you: you lead` : 'You look on your own'}</p>
      {isHere && released !== 'ring' && <button type="button" className="button" onClick={() => lookWith(last.seatId)}>Look with {last.name} again</button>}
      <button type="button" className="button" aria-label="Put this line away" onClick={() => setLast(null)}>Done</button>
    </div>
  )
}

/** The page that lies over this board, told to the others; null where it is none that they may open too. */
function useOwnPage() {
  const kind = useAsking()?.kind
  const page = SHARED_PAGES.find((one) => one === kind) ?? null
  const tellPage = useBoard((state) => state.tellPage)
  useEffect(() => tellPage(page), [tellPage, page])
  return page
}
