import { useRef } from 'react'
import { useBoard } from '../session/useBoard.ts'
import { AcceptedFold } from './AcceptedFold.tsx'
import { CautionNote } from './CautionNote.tsx'
import { SnagLine } from './SnagLine.tsx'
import './SnagList.css'
import { useNewCautions } from './useNewCautions.ts'
import { useNewestFirst } from './useNewestFirst.ts'

/**
 * The checks that are not quiet, loudest and newest first; what somebody accepted; then the usual care. Says so when
 * there is nothing to say.
 */
export function SnagList() {
  const snags = useNewestFirst()
  const title = useRef<HTMLHeadingElement>(null)
  const cautions = useBoard((board) => board.prediction.cautions)
  return (
    <section className="snags" aria-label="Snags">
      <CareNow />
      <h2 className="snags-title" ref={title} tabIndex={-1}>
        Snags <span className="snags-count">{countInWords(snags.length)}</span>
      </h2>
      {snags.length > 0 && (
        <ol className="snags-list">
          {snags.map((snag) => (
            <li key={snag.key}>
              <SnagLine snag={snag} onDone={() => title.current?.focus()} />
            </li>
          ))}
        </ol>
      )}
      <AcceptedFold />
      {cautions.length > 0 && (
        <details className="snags-care">
          <summary>The usual care: {cautions.length === 1 ? 'one note' : `${cautions.length} notes`}</summary>
          <ul>
            {cautions.map((caution) => (
              <li key={caution.key}>
                <CautionNote caution={caution} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  )
}

/** The usual care, at the moment the piece is placed. */
function CareNow() {
  const { fresh, understood } = useNewCautions()
  return (
    <div role="status">
      {fresh.length > 0 && (
        <div className="snags-care-now">
          {fresh.map((caution) => (
            <CautionNote key={caution.key} caution={caution} />
          ))}
          <button type="button" className="button button-lined" onClick={understood}>
            Understood
          </button>
        </div>
      )}
    </div>
  )
}

function countInWords(count: number): string {
  return count === 0 ? 'Nothing snags' : count === 1 ? 'one' : String(count)
}
