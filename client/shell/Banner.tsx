import { useBoard } from '../session/useBoard.ts'
import './Banner.css'
import { saveJobFile } from './dialogs/jobFile.ts'

/** What nobody may overlook: edits that are not being kept, and a seat that is no longer one. */
export function Banner() {
  const connection = useBoard((board) => board.connection)
  const plan = useBoard((board) => board.plan)
  const turnedAway = connection.state === 'refused'
  if (!turnedAway && connection.notKept === null) return null
  return (
    <div className="banner" role="alert">
      <p>{turnedAway ? `${connection.words} You see the plan as it last was.` : `${connection.notKept} Your changes wait on this device until they are kept.`}</p>
      <button type="button" className="button" onClick={() => saveJobFile(plan)}>
        Save a job file
      </button>
      {turnedAway && (
        <a className="button" href="/">
          To the first page
        </a>
      )}
    </div>
  )
}
