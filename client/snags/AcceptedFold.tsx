import { reopenSnag } from '../../shared-core/plan/edits/snags.ts'
import { useBoard } from '../session/useBoard.ts'
import { usePlanEdit } from '../session/usePlanEdit.ts'
import { acceptedWords } from './acceptedWords.ts'

/** What somebody wants so, folded away with their name; also what was accepted and is no longer the case. */
export function AcceptedFold() {
  const edit = usePlanEdit()
  const mayEdit = useBoard((board) => board.mayEdit)
  const records = useBoard((board) => board.shown.looks[board.lookId]?.accepted)
  const accepted = useBoard((board) => board.prediction.accepted)
  const speaking = useBoard((board) => board.prediction.snags)
  // What has grown worse since stands in the list above, with the name beside it.
  const kept = Object.entries(records ?? {}).filter(([key]) => speaking.every((snag) => snag.key !== key))
  if (kept.length === 0) return null
  return (
    <details className="snags-accepted">
      <summary>Accepted ({kept.length})</summary>
      <ul aria-label="Accepted snags">
        {kept.map(([key, acceptance]) => {
          const now = accepted.find((snag) => snag.key === key)
          return (
            <li key={key} className="accepted">
              <span>{now?.message ?? acceptance.message}</span>
              <span className="accepted-by">
                {acceptedWords(acceptance)}
                {now ? '' : ' · no longer so'}
              </span>
              {mayEdit && (
                <button
                  type="button"
                  className="button snag-act"
                  aria-label={`Not accepted any more: ${acceptance.message}`}
                  onClick={() => edit((plan, lookId) => reopenSnag(plan, lookId, key))}
                >
                  Not accepted any more
                </button>
              )}
            </li>
          )
        })}
      </ul>
    </details>
  )
}
