import { setPower } from '../../shared-core/plan/edits/lights.ts'
import type { Judged, Learned } from '../../shared-core/meter/learn.ts'
import { turnFor } from '../../shared-core/meter/turn.ts'
import { useBoard } from '../session/useBoard.ts'
import { usePlanEdit } from '../session/usePlanEdit.ts'
import { answerWords } from './meterWords.ts'
import { useCauses } from './useCauses.ts'

interface AnswerCardProps {
  readonly judged: Judged
  readonly plannedFNumber: number
  readonly learned: Learned
  readonly onAccept: () => void
  readonly onWithdraw: () => void
  /** What comes next, in words. */
  readonly next: string
  readonly onNext: () => void
}

/** What a reading just taken says: planned against read, what to turn, and why it may not fit. */
export function AnswerCard({ judged, plannedFNumber, learned, onAccept, onWithdraw, next, onNext }: AnswerCardProps) {
  const { reading, state } = judged
  const [only] = reading.fired.length === 1 ? reading.fired : []
  const lightNow = useBoard((board) => (only === undefined ? undefined : board.plan.looks[reading.lookId]?.lights[only.lightId]))
  const head = useBoard((board) => (only === undefined ? undefined : board.plan.heads[only.headId]))
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  const causes = useCauses(learned, judged)
  // What does not fit is first to be understood: turning would hide a missing gel.
  const turn = only && head && state !== 'held-back' ? turnFor(head, only.energyJoules, reading.fNumber, plannedFNumber) : null
  const isTurned = turn !== null && lightNow !== undefined && Math.abs(lightNow.energyJoules - turn.energyJoules) < 1e-6 * turn.energyJoules
  return (
    <section className="page-panel meter-answer" aria-label="Answer">
      <p className="meter-answer-words" role="status">{answerWords(reading.fNumber, plannedFNumber, turn)}</p>
      {state === 'held-back' && (
        <div className="meter-care">
          <p>No head differs by so much, so nothing is learned from it yet.</p>
          {causes === null ? <p>Trying what it could be…</p> : (
            <ol className="meter-causes">
              {causes.slice(0, 3).map(({ words, likelihood }) => <li key={words}>{words} <span className="page-soft">{Math.round(likelihood * 100)} in 100</span></li>)}
            </ol>
          )}
          {mayEdit && (
            <div className="meter-row">
              <button type="button" className="button button-lined" onClick={onWithdraw}>Withdraw, read again</button>
              <button type="button" className="button" onClick={onAccept}>It is so: learn it</button>
            </div>
          )}
        </div>
      )}
      {turn !== null && turn.stops !== 0 && state !== 'withdrawn' && only && mayEdit && (
        isTurned ? <p className="page-soft">Turned: {only.letter} stands at {turn.to} in the plan.</p> : (
          <button type="button" className="button button-lined meter-turned" onClick={() => edit((plan) => setPower(plan, reading.lookId, only.lightId, turn.energyJoules))}>
            {only.letter} is turned to {turn.to}: write it in the plan
          </button>
        )
      )}
      <button type="button" className="button button-main meter-take" onClick={onNext}>
        {next}
      </button>
    </section>
  )
}
