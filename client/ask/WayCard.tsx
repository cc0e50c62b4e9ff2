import { useRef, type PointerEvent } from 'react'
import type { Outcome } from '../../shared-core/ask/answer.ts'
import type { WayFound } from './askOrders.ts'
import type { Preview } from './usePreview.ts'

interface WayCardProps {
  readonly way: WayFound
  /** The best of them. */
  readonly isFirst: boolean
  /** How many of the outcomes were asked for; the others had to stay as they were. */
  readonly saidCount: number
  readonly preview: Preview
  readonly onApply: () => void
}

/** One way to what is wanted: what comes of it, what it costs, what has to be moved. */
export function WayCard({ way, isFirst, saidCount, preview, onApply }: WayCardProps) {
  const kept = way.outcomes.slice(saidCount)
  return (
    <li className="ask-way" data-seen={preview.seen === way.by}>
      <h3 className="ask-way-title">{way.title}</h3>
      <div className="ask-way-more">
        <ul className="ask-outcomes" aria-label="What comes of it">
          {way.outcomes.slice(0, saidCount).map((outcome) => <OutcomeLine key={outcome.words} outcome={outcome} />)}
          {kept.filter(({ isMet }) => !isMet).map((outcome) => <OutcomeLine key={outcome.words} outcome={outcome} />)}
          {kept.length > 0 && kept.every(({ isMet }) => isMet) && <li className="ask-kept">Every other light keeps its level</li>}
        </ul>
        {way.costs.length > 0 && (
          <ul className="ask-costs" aria-label="What it costs">
            {way.costs.map((words) => <li key={words}>{words}</li>)}
          </ul>
        )}
        {way.moves.length > 0 && (
          <details className="ask-fold">
            <summary>{way.moves.length === 1 ? '1 change to make' : `${way.moves.length} changes to make`}</summary>
            <ul>{way.moves.map((words) => <li key={words}>{words}</li>)}</ul>
          </details>
        )}
      </div>
      <div className="ask-way-acts">
        <PreviewButton way={way} preview={preview} />
        <button type="button" className={`button ${isFirst ? 'button-main' : 'button-lined'}`} aria-label={`Apply: ${way.title}`} onClick={onApply}>Apply</button>
      </div>
    </li>
  )
}

function OutcomeLine({ outcome: { isMet, words } }: { readonly outcome: Outcome }) {
  return (
    <li className="ask-outcome" data-met={isMet}>
      <span aria-hidden>{isMet ? '✓' : '≠'}</span>
      <span><span className="heard">{isMet ? 'Met: ' : 'Missed: '}</span>{words}</span>
    </li>
  )
}

/** A press this long is a look, and ends with it; a shorter one stays. */
const HELD_MS = 350

/** Lays the way over Frame, Ladder and Floor: while it is held, or until it is pressed again. */
function PreviewButton({ way, preview }: { readonly way: WayFound; readonly preview: Preview }) {
  const heldSince = useRef<number | null>(null)
  const isSeen = preview.seen === way.by

  function onPointerDown(event: PointerEvent): void {
    if (event.button !== 0 || event.pointerType === 'touch' || isSeen) return
    heldSince.current = event.timeStamp
    preview.look(way.by, way.edit)
  }

  /** @param timeStamp of the end of a press that began with looking */
  function onClick(timeStamp: number): void {
    const since = heldSince.current
    heldSince.current = null
    if (since === null) preview.look(way.by, way.edit)
    else if (timeStamp - since > HELD_MS) preview.leave()
  }

  return (
    <button
      type="button"
      className="button button-lined"
      aria-pressed={isSeen}
      aria-label={`Preview: ${way.title}`}
      onPointerDown={onPointerDown}
      onPointerCancel={preview.leave}
      onClick={(event) => onClick(event.timeStamp)}
    >
      Preview
    </button>
  )
}
