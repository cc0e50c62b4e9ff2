import { useBoard } from '../../session/useBoard.ts'
import { useReopening } from '../../notes/useNotes.ts'
import '../../shell/Banner.css'
import './lock.css'

/** Says that what is on the board is kept and not the shared plan, and leads back. */
export function ReopenedLine() {
  const words = useBoard((board) => board.reopened?.words ?? null)
  const { leave } = useReopening()
  if (words === null) return null
  return (
    <div className="banner reopened" role="status">
      <p>You look at {words}. Nothing here can be changed.</p>
      <button type="button" className="button" onClick={leave}>Back to now</button>
    </div>
  )
}
