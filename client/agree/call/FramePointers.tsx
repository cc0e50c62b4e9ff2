import { useBoard } from '../../session/useBoard.ts'
import './call.css'

/** Where others point in the Frame, with their names: the same place of the picture on every screen. */
export function FramePointers() {
  const people = useBoard((board) => board.people)
  const lookId = useBoard((board) => board.lookId)
  return people.filter((person) => !person.isSelf && person.sees.pointer !== null && person.lookId === lookId).map(({ seatId, name, sees }) => (
    <span key={seatId} className="frame-pointer" aria-hidden style={{ left: `${sees.pointer!.frameX * 100}%`, top: `${sees.pointer!.frameY * 100}%` }}>
      <span className="frame-pointer-name">{name}</span>
    </span>
  ))
}
