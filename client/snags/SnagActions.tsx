import { lazy, Suspense, useState } from 'react'
import { acceptSnag } from '../../shared-core/plan/edits/snags.ts'
import type { Snag } from '../../shared-core/predict/snag.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { usePerform } from '../session/usePerform.ts'

/** With the worker behind it, once a cure is asked for. */
const SpillCure = lazy(async () => ({ default: (await import('../ask/spill/SpillCure.tsx')).SpillCure }))

export interface SnagActionsProps {
  readonly snag: Snag
  /** Called once the snag was mended or accepted: its line, and the button that was pressed, are about to go. */
  readonly onDone?: (() => void) | undefined
}

/** What can be done about a snag where it is read: its mend, as one edit, or leaving it so with one's name. */
export function SnagActions({ snag, onDone }: SnagActionsProps) {
  const store = useBoardStore()
  const perform = usePerform()
  const mayEdit = useBoard((board) => board.mayEdit)
  const [isCureWanted, setIsCureWanted] = useState(false)
  const { mend } = snag
  if (!mayEdit) return null
  const accept = (): void => {
    const { plan, lookId, people } = store.getState()
    const by = people.find(({ isSelf }) => isSelf)?.name ?? ''
    if (perform(acceptSnag(plan, lookId, snag, by, Date.now()), `Accepted in your name: ${snag.message}`)) onDone?.()
  }
  const isSpill = snag.rule === 'spill' || snag.rule === 'second-colour'
  return (
    <div className="snag-acts">
      {isSpill && !isCureWanted && (
        <button type="button" className="button button-lined snag-act" aria-label={`Find a cure: ${snag.message}`} onClick={() => setIsCureWanted(true)}>
          Find a cure
        </button>
      )}
      {isSpill && isCureWanted && (
        <Suspense fallback={null}>
          <SpillCure snagKey={snag.key} onDone={onDone} />
        </Suspense>
      )}
      {mend && (
        <button
          type="button"
          className="button button-lined snag-act"
          onClick={() => {
            if (perform({ ok: true, edit: mend.edit }, mend.words)) onDone?.()
          }}
        >
          {mend.words}
        </button>
      )}
      <button type="button" className="button snag-act" aria-label={`That’s the look: ${snag.message}`} onClick={accept}>
        That’s the look
      </button>
    </div>
  )
}
