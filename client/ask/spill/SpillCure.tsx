import { useEffect } from 'react'
import type { Cure, SpillCures } from '../../../shared-core/ask/spillCures.ts'
import { useBoard, useBoardStore } from '../../session/useBoard.ts'
import '../answers.css'
import { useLookAnswer } from '../useLookAnswer.ts'
import { usePreview, type Preview } from '../usePreview.ts'
import { forgetLooked, lookedSnagStore } from './lookedSnag.ts'
import './spill.css'

/** What silences one spill: the single best cure as a button, the others folded. */
export function SpillCure({ snagKey, onDone }: { readonly snagKey: string; readonly onDone?: (() => void) | undefined }) {
  const { answer, share, trouble, isOld } = useLookAnswer('spill-cures')
  const mayEdit = useBoard((board) => board.mayEdit)
  const store = useBoardStore()
  const preview = usePreview()
  // Not sooner than the board is as it was: the line must not go in between.
  const isAsItWas = useBoard(({ shown, plan }) => shown === plan)
  const isOver = preview.seen === null && isAsItWas
  useEffect(() => {
    if (isOver) forgetLooked(snagKey)
  }, [isOver, snagKey])
  useEffect(() => () => forgetLooked(snagKey), [snagKey])
  const looking: Preview = {
    ...preview,
    look(key, edit) {
      const snag = store.getState().prediction.snags.find((each) => each.key === snagKey)
      if (snag) lookedSnagStore.setState({ snag })
      preview.look(key, edit)
    },
  }
  const found = isOld ? undefined : answer?.find(({ key }) => key === snagKey)
  if (!found) {
    const words = trouble || (share === null && !isOld ? 'No cure was looked for here.' : `Trying grids, flags, moves and power… ${Math.round((share ?? 0) * 100)} %`)
    return <p className="answer-words spill-waiting" role="status">{words}</p>
  }
  const apply = (cure: Cure): void => {
    forgetLooked(snagKey)
    preview.apply(cure.edit)
    store.say(cure.title)
    onDone?.()
  }
  const { best, others } = found
  return (
    <div className="spill-cure">
      {best
        ? <CureLine cure={best} found={found} preview={looking} mayEdit={mayEdit} isBest onApply={() => apply(best)} />
        : <p className="answer-words">Nothing that was tried silences it{others.length > 0 ? '; the nearest come first.' : '.'}</p>}
      {others.length > 0 && (
        <details className="answer-fold" open={best === null}>
          <summary>{best ? `Other cures (${others.length})` : 'What comes near'}</summary>
          <ul className="spill-others">
            {others.map((cure) => (
              <li key={cure.title}>
                <CureLine cure={cure} found={found} preview={looking} mayEdit={mayEdit} isBest={false} onApply={() => apply(cure)} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}

interface CureLineProps {
  readonly cure: Cure
  readonly found: SpillCures
  readonly preview: Preview
  readonly mayEdit: boolean
  readonly isBest: boolean
  readonly onApply: () => void
}

function CureLine({ cure, found, preview, mayEdit, isBest, onApply }: CureLineProps) {
  const { title, cost, stopsUnderAfter, isQuiet, newSnags, edit } = cure
  const after = stopsUnderAfter === null ? 'gone' : `${stopsUnderAfter.toFixed(1)} under`
  return (
    <div className="spill-line">
      {mayEdit ? (
        <span className="spill-acts">
          <button type="button" className={`button ${isBest ? 'button-main' : 'button-lined'} spill-apply`} onClick={onApply}>{title}</button>
          <button type="button" className="button spill-look" aria-pressed={preview.seen === title} onClick={() => preview.look(title, edit)}>
            Look<span className="heard"> at it: {title}</span>
          </button>
        </span>
      ) : <b>{title}</b>}
      <span className="answer-words">
        {found.stopsUnder.toFixed(1)} under → <b>{after}</b>{isQuiet ? '' : `, wants ${found.thresholdStops.toFixed(1)}`}. {cost}
        {newSnags.map((words) => `; but ${words}`).join('')}
      </span>
    </div>
  )
}
