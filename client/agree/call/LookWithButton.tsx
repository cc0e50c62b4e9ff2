import type { Person } from '../../session/board.ts'
import { useBoard } from '../../session/useBoard.ts'
import { leaderOf } from './leaderOf.ts'

/** Looks with a person: their look, view, single, before and pick, as they change. */
export function LookWithButton({ person }: { readonly person: Person }) {
  const people = useBoard((board) => board.people)
  const looksWith = useBoard((board) => board.looksWith)
  const lookWith = useBoard((board) => board.lookWith)
  const ownSeatId = people.find(({ isSelf }) => isSelf)?.seatId ?? ''
  if (looksWith === person.seatId) {
    return <button type="button" className="button button-lined" onClick={() => lookWith(null)}>Stop looking with {person.name}</button>
  }
  if (leaderOf(people, person.seatId, ownSeatId) === null) return <span className="people-list-soft">looks with you</span>
  return <button type="button" className="button button-lined" onClick={() => lookWith(person.seatId)}>Look with {person.name}</button>
}
