import { capital } from '../../../shared-core/plan/capital.ts'
import type { AreaChange } from '../../../shared-core/ask/visibleChange.ts'
import { signedStops } from '../../ladder/areaNames.ts'
import { setSheet } from '../../session/pageStore.ts'
import { useBoard } from '../../session/useBoard.ts'
import { phone } from '../../shell/useMedia.ts'
import type { LookFound, LooksFound } from '../askOrders.ts'
import { usePreview, type Preview } from '../usePreview.ts'
import { areasLost, leftWords, turnWords } from './leftWords.ts'

const MOST_AREAS_SHOWN = 4

interface LooksLeftProps {
  readonly found: LooksFound
  /** It was called off before everything was tried. */
  readonly isCutShort: boolean
  readonly onApplied: () => void
}

/** The best look that is left and what of it is lost; everything else that was tried, folded. */
export function LooksLeft({ found, isCutShort, onApplied }: LooksLeftProps) {
  const preview = usePreview()
  const { best, others } = found
  if (best === null) {
    return <p className="answer-words" role="status">{isCutShort ? 'Nothing was tried yet.' : 'Nothing in the kit can take its place, and nothing else was found to try.'}</p>
  }
  return (
    <div className="without-left">
      <p className="heard" role="status">Best that is left: {best.title}. {leftWords(best)}</p>
      <OneLeft look={best} preview={preview} isBest onApplied={onApplied} />
      {isCutShort && <p className="answer-words">Stopped: the best of what was tried by then.</p>}
      {others.length > 0 && (
        <details className="answer-fold">
          <summary>What else was tried ({others.length})</summary>
          <ul className="without-others">
            {others.map((look) => <li key={look.title}><OneLeft look={look} preview={preview} isBest={false} onApplied={onApplied} /></li>)}
          </ul>
        </details>
      )}
    </div>
  )
}

interface OneLeftProps {
  readonly look: LookFound
  readonly preview: Preview
  readonly isBest: boolean
  readonly onApplied: () => void
}

function OneLeft({ look, preview, isBest, onApplied }: OneLeftProps) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const { title, lost, stops, areas, edit } = look
  const seen = areasLost(areas)
  return (
    <section className="without-one" aria-label={title}>
      <h3 className="without-title">{title}</h3>
      <p className="answer-words">{leftWords(look)}</p>
      {stops.map((words) => <p key={words} className="answer-words without-stop">{words}</p>)}
      {lost.length > 0 && <p className="answer-words without-lost">{capital(lost.join('; '))}.</p>}
      {mayEdit && edit.changes.length > 0 && (
        <div className="answer-acts">
          <button
            type="button"
            className="button button-lined"
            aria-pressed={preview.seen === title}
            aria-label={`Look at it: ${title}`}
            onClick={() => {
              preview.look(title, edit)
              // On a phone a raised sheet would hide what is to be looked at.
              if (matchMedia(phone).matches) setSheet('low')
            }}
            onKeyDown={(event) => {
              // Escape first lets go of what is only looked at; then it means the sheet.
              if (event.key !== 'Escape' || preview.seen === null) return
              event.stopPropagation()
              preview.leave()
            }}
          >
            Look
          </button>
          <button
            type="button"
            className={`button ${isBest ? 'button-main' : 'button-lined'}`}
            aria-label={`Apply: ${title}`}
            onClick={() => {
              preview.apply(edit)
              onApplied()
            }}
          >
            Apply
          </button>
        </div>
      )}
      {isBest && seen.length > 0 && (
        <ul className="without-areas" aria-label="Areas that change, the most first">
          {seen.slice(0, MOST_AREAS_SHOWN).map((area) => <AreaRow key={area.areaId} area={area} />)}
        </ul>
      )}
      {isBest && seen.length > MOST_AREAS_SHOWN && (
        <details className="answer-fold">
          <summary>{seen.length - MOST_AREAS_SHOWN} more areas change less</summary>
          <ul className="without-areas">{seen.slice(MOST_AREAS_SHOWN).map((area) => <AreaRow key={area.areaId} area={area} />)}</ul>
        </details>
      )}
    </section>
  )
}

function AreaRow({ area }: { readonly area: AreaChange }) {
  return (
    <li className="without-area">
      <span className="answer-patch" aria-hidden>
        <span style={{ background: area.from }} />
        <span style={{ background: area.to }} />
      </span>
      <span className="answer-name">{capital(area.label)}</span>
      <span className="answer-figure"><b>{area.stops === null ? 'dark' : signedStops(area.stops)}</b></span>
      <span className="answer-note">{turnWords(area)}</span>
    </li>
  )
}
