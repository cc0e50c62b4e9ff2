import { useState } from 'react'
import { useBoard } from '../../session/useBoard.ts'
import '../answers.css'
import { useLookAnswer } from '../useLookAnswer.ts'
import { usePreview } from '../usePreview.ts'
import { pushNow } from './curveShape.ts'
import './white.css'
import { WhiteCurve } from './WhiteCurve.tsx'
import { WhiteSheets } from './WhiteSheets.tsx'

/** White behind, open where white is what is wanted; where it is not, only once it is asked for. */
export function WhiteBehindHere() {
  const wantsWhite = useBoard((board) => board.shown.looks[board.lookId]?.backdrop.intent === 'clean-white')
  const [isAsked, setIsAsked] = useState(false)
  return (
    <section className="white" aria-label="White behind">
      {wantsWhite ? (
        <h3 className="answer-head">White behind</h3>
      ) : (
        <button type="button" className="button button-lined white-ask" aria-expanded={isAsked} onClick={() => setIsAsked(!isAsked)}>
          What white behind would take
        </button>
      )}
      {(wantsWhite || isAsked) && <WhiteTrade />}
    </section>
  )
}

/** What it costs as it is lit, the trade to drag along, and the sheets that could do it. */
function WhiteTrade() {
  const { answer, share, trouble, isOld } = useLookAnswer('white-behind')
  const mayEdit = useBoard((board) => board.mayEdit)
  const preview = usePreview()
  const gentler = answer?.gentler ?? null
  const now = answer === null ? null : pushNow(answer.curve)
  const isThere = now !== null && Math.abs(now) < 0.05
  return (
    <>
      <p className="answer-words" role="status">{trouble || answer?.words || 'Looking how far it is to white…'}</p>
      {answer && answer.curve.length > 0 && (
        <div data-old={isOld} className="white-trade">
          <WhiteCurve curve={answer.curve} />
        </div>
      )}
      {answer && mayEdit && (
        <div className="answer-acts">
          {gentler?.edit && (
            <button type="button" className="button button-lined" aria-pressed={preview.seen === gentler.name} onClick={() => preview.look(gentler.name, gentler.edit!)}>
              Look at {gentler.name.toLowerCase()}
            </button>
          )}
          {answer.edit && !isThere && (
            <button type="button" className="button button-lined" disabled={isOld} onClick={() => preview.apply(answer.edit!)}>
              To just white
            </button>
          )}
        </div>
      )}
      {answer && answer.sheets.length > 0 && <WhiteSheets sheets={answer.sheets} preview={preview} />}
      {share !== null && <p className="answer-words">Trying the drawer’s sheets, {Math.round(share * 100)} %</p>}
    </>
  )
}
