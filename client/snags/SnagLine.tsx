import { formatNumber } from '../../shared-core/plan/entry/number.ts'
import type { Snag } from '../../shared-core/predict/snag.ts'
import { useBoard } from '../session/useBoard.ts'
import { selectionAbout } from './selectionAbout.ts'
import { severityWords } from './severityWords.ts'
import './SnagList.css'

/** One snag: what is wrong, its number against the threshold, and what mends it. Pressing it picks what it is about. */
export function SnagLine({ snag }: { readonly snag: Snag }) {
  const select = useBoard((board) => board.select)
  const look = useBoard((board) => board.shown.looks[board.lookId])
  const about = look ? selectionAbout(snag.about, look) : null
  const { mark, word } = severityWords[snag.severity]
  const words = (
    <>
      <span className="snag-severity" data-severity={snag.severity}>
        <span aria-hidden>{mark}</span> {word}
      </span>
      <span className="snag-message">{snag.message}</span>
      <span className="snag-action">
        {snag.action} <span className="snag-numbers">({numbersOf(snag)})</span>
      </span>
    </>
  )
  if (!about) return <div className="snag">{words}</div>
  return (
    <button type="button" className="snag" onClick={() => select(about)}>
      {words}
    </button>
  )
}

/** "2.0, limit 3.0 stops": where it stands and where it should. */
function numbersOf({ value, threshold, unit }: Snag): string {
  const written = (number: number) => formatNumber(number, Math.abs(number) < 10 ? 1 : 0)
  return `${written(value)}, limit ${written(threshold)}${unit === '' ? '' : ` ${unit}`}`
}
