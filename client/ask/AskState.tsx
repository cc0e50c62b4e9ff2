import type { Asked } from './useAnswer.ts'
import { verdictOf } from './verdict.ts'

interface AskStateProps {
  readonly asked: Asked | null
  readonly isPast: boolean
  readonly onAgain: () => void
  readonly onStop: () => void
}

/** How the question stands: being worked on, answered and how, or overtaken by a change. */
export function AskState({ asked, isPast, onAgain, onStop }: AskStateProps) {
  const verdict = asked?.found && !isPast ? verdictOf(asked.found, asked.plan, asked.lookId) : null
  const isAtWork = asked !== null && asked.share !== null
  const words = asked === null
    ? 'Say what you want of the look, or drag an area’s marker on the Stop Ladder. Nothing changes until you apply a way.'
    : isPast ? 'The look has changed since.'
      : isAtWork ? 'Looking for ways to it'
        : asked.trouble || verdict?.words
  return (
    <div className="ask-state">
      <p role="status" className="ask-state-words" data-strong={verdict !== null}>{words}</p>
      {isAtWork && !isPast && (
        <>
          <progress className="ask-progress" value={asked.share ?? 0} aria-label="Ways tried" />
          <button type="button" className="button button-lined" onClick={onStop}>Stop</button>
        </>
      )}
      {isPast && <button type="button" className="button button-lined" onClick={onAgain}>Ask again</button>}
      {verdict !== null && verdict.further.length > 0 && (
        <details className="ask-fold">
          <summary>What else was tried</summary>
          <ul>{verdict.further.map((each) => <li key={each}>{each}</li>)}</ul>
        </details>
      )}
    </div>
  )
}
