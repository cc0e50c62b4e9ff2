import { useBoard } from '../session/useBoard.ts'
import { selectionAbout } from './selectionAbout.ts'
import { severityWords } from './severityWords.ts'
import { acceptedWords } from './acceptedWords.ts'
import { SnagActions, type SnagActionsProps } from './SnagActions.tsx'
import { snagNumbers } from './snagNumbers.ts'
import './SnagList.css'

/**
 * One snag: what is wrong, its number against the threshold, and what mends it. Pressing the words picks what it is
 * about; the buttons below mend it or accept it.
 */
export function SnagLine({ snag, onDone }: SnagActionsProps) {
  const select = useBoard((board) => board.select)
  const look = useBoard((board) => board.shown.looks[board.lookId])
  const about = look ? selectionAbout(snag.about, look) : null
  const before = look?.accepted[snag.key]
  const { mark, word } = severityWords[snag.severity]
  const words = (
    <>
      <span className="snag-severity" data-severity={snag.severity}>
        <span aria-hidden>{mark}</span> {word}
      </span>
      <span className="snag-message">{snag.message}</span>
      <span className="snag-action">
        {snag.action} <span className="snag-numbers">({snagNumbers(snag)})</span>
      </span>
      {before && <span className="snag-action">Worse than what was accepted: {acceptedWords(before)}</span>}
    </>
  )
  return (
    <>
      {about ? (
        <button type="button" className="snag" onClick={() => select(about)}>
          {words}
        </button>
      ) : (
        <div className="snag">{words}</div>
      )}
      <SnagActions snag={snag} onDone={onDone} />
    </>
  )
}
