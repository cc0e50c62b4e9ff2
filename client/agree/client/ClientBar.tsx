import { looksInOrder } from '../../session/looksInOrder.ts'
import { useBoard } from '../../session/useBoard.ts'
import { ConnectionWords } from '../../shell/bar/ConnectionWords.tsx'
import { LookMenu } from '../../shell/bar/LookMenu.tsx'
import { PeopleMenu } from '../../shell/bar/PeopleMenu.tsx'
import { showNumbers } from './plainWords.ts'

/** The job, the look's choice where there is one, and who is here; over it the pen, when it was handed over. */
export function ClientBar() {
  const title = useBoard((board) => board.plan.title)
  const hasChoice = useBoard((board) => looksInOrder(board.plan).length > 1)
  const lookName = useBoard((board) => board.plan.looks[board.lookId]?.name ?? '')
  const hasPen = useBoard((board) => board.mayEdit)
  return (
    <header>
      {hasPen && (
        <div className="look-with" role="status">
          <p>You have the pen</p>
          <button type="button" className="button" onClick={() => showNumbers(true)}>Open the board</button>
        </div>
      )}
      <div className="client-bar">
        <h1 className="client-bar-title">{title === '' ? 'Untitled job' : title}</h1>
        {hasChoice ? <LookMenu toChoose /> : <span className="client-bar-look">{lookName}</span>}
        <div className="client-bar-people">
          <ConnectionWords />
          <PeopleMenu />
        </div>
      </div>
    </header>
  )
}
