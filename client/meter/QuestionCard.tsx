import type { Question } from '../../shared-core/meter/questions.ts'
import { asRead, firesWords, heldWords } from './meterWords.ts'

/** One reading to take, big enough to be read at arm's length: what fires, how the meter is held, what it should show. */
export function QuestionCard({ question }: { readonly question: Question }) {
  const { plannedFNumber, predictedFNumber, plusMinusStops, isWanted, state } = question
  const differs = isWanted && asRead(plannedFNumber) !== asRead(predictedFNumber)
  return (
    <div className="meter-question">
      <h3>
        <b>{firesWords(question)}.</b> {heldWords(question)}.
      </h3>
      <p className="meter-planned">
        <span>{isWanted ? 'Wanted' : 'Predicted'}</span>
        <output>{asRead(plannedFNumber)}</output>
        <span className="page-soft">
          {differs && `predicted ${asRead(predictedFNumber)}, `}± {plusMinusStops.toFixed(1)} stop
        </span>
      </p>
      {state === 'again' && <p className="meter-care">The last reading does not stand: read it again.</p>}
      <p className="page-soft">
        Say “Firing!” before each flash; eyes near a head are closed or turned away, and nobody looks into it. The usual care: the head’s
        manual and the studio’s rules come first.
      </p>
    </div>
  )
}
