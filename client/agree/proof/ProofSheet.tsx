import { useMemo, useState } from 'react'
import { duplicateLook } from '../../../shared-core/plan/edits/looks.ts'
import { FullPage } from '../../controls/FullPage.tsx'
import { looksInOrder } from '../../session/looksInOrder.ts'
import { useBoard } from '../../session/useBoard.ts'
import { usePerform } from '../../session/usePerform.ts'
import { BallotHere } from './BallotHere.tsx'
import { useBallotHere } from './useBallotHere.ts'
import { Proof } from './Proof.tsx'
import './proof.css'
import { seenFrom } from './sameCrop.ts'
import { finishedAs, finishesDiffer, finishWords } from './sameFinish.ts'
import { useZoomHand } from './useZoomHand.ts'

export const FEWEST = 2
export const MOST = 6

/** Looks side by side, at one crop and one zoom, with what tells them apart and the vote on them. */
export function ProofSheet({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const shownLookId = useBoard((board) => board.lookId)
  const mayEdit = useBoard((board) => board.mayEdit)
  const showLook = useBoard((board) => board.showLook)
  const perform = usePerform()
  const looks = looksInOrder(plan)
  const [asked, setAsked] = useState<readonly string[]>(() => firstChoice(looks.map(([id]) => id), shownLookId))
  const [asPlanned, setAsPlanned] = useState(false)
  const [isOneFinish, setOneFinish] = useState(false)
  const [sheet, setSheet] = useState<HTMLDivElement | null>(null)
  const hand = useZoomHand(sheet)
  const chosen = asked.filter((id) => plan.looks[id] !== undefined)
  // What the others are held against: the look on the board, where it is among them.
  const modelId = chosen.includes(shownLookId) ? shownLookId : (chosen[0] ?? shownLookId)
  const ballot = useBallotHere(chosen)
  const plans = useMemo(
    () => new Map(Object.keys(plan.looks).map((id) => {
      const cropped = asPlanned ? plan : seenFrom(plan, id, modelId)
      return [id, isOneFinish ? finishedAs(cropped, id, modelId) : cropped]
    })),
    [plan, asPlanned, isOneFinish, modelId],
  )
  const areFinishedApart = finishesDiffer(plan, chosen)

  function turn(id: string): void {
    const isChosen = chosen.includes(id)
    if (isChosen ? chosen.length <= FEWEST : chosen.length >= MOST) return
    setAsked(isChosen ? chosen.filter((other) => other !== id) : looks.map(([each]) => each).filter((each) => each === id || chosen.includes(each)))
  }

  function copy(id: string): void {
    const made = duplicateLook(plan, id)
    if (perform(made) && made.ok && chosen.length < MOST) setAsked([...chosen, made.lookId])
  }

  const modelName = plan.looks[modelId]?.name ?? 'the first'
  return (
    <FullPage
      title="Proof sheet"
      words={asPlanned
        ? 'Each look as its own camera sees and exposes it'
        : `Each as its own camera exposes it, seen from that of ${modelName}`}
      onClose={onClose}
      tools={(
        <div className="proof-tools">
          <button type="button" className="button button-lined" aria-pressed={!asPlanned} onClick={() => setAsPlanned(!asPlanned)}>One crop</button>
          <div role="group" aria-label="Zoom of all proofs" className="proof-zoom">
            <button type="button" className="button" aria-label="Farther" onClick={() => hand.closer(1 / 1.5)}>−</button>
            <button type="button" className="button" onClick={hand.reset} aria-label={`${hand.zoom.times.toFixed(1)}×: show the whole Frames`}>{hand.zoom.times.toFixed(1)}×</button>
            <button type="button" className="button" aria-label="Closer" onClick={() => hand.closer(1.5)}>+</button>
          </div>
        </div>
      )}
    >
      <div className="proof-page">
        <fieldset className="proof-choice">
          <legend>Looks on the sheet</legend>
          {looks.map(([id, look]) => (
            <label key={id} className="proof-choice-look">
              <input type="checkbox" checked={chosen.includes(id)} disabled={chosen.includes(id) ? chosen.length <= FEWEST : chosen.length >= MOST} onChange={() => turn(id)} />
              {look.name}
            </label>
          ))}
        </fieldset>
        <BallotHere here={ballot} lookIds={chosen} />
        {areFinishedApart && (
          <div className="proof-finish">
            <p role="status">{isOneFinish ? `All in the finish of ${modelName}, which is not each look's own` : 'The looks are finished differently: part of what you see is done after capture'}</p>
            <button type="button" className="button button-lined" aria-pressed={isOneFinish} onClick={() => setOneFinish(!isOneFinish)}>Same finish</button>
          </div>
        )}
        {/* eslint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- the proofs are one thing to zoom, by hand and by keys */}
        <div
          ref={setSheet}
          className="proof-sheet"
          data-count={chosen.length}
          role="application"
          aria-label="Proofs. Plus and minus zoom all of them, arrow keys move them, 0 shows the whole Frames"
          // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- it is zoomed by keys
          tabIndex={0}
          onKeyDown={hand.onKeyDown}
          onPointerDown={hand.onPointerDown}
          onPointerMove={hand.onPointerMove}
          onPointerUp={hand.onPointerUp}
          onPointerCancel={hand.onPointerUp}
        >
          {chosen.map((id) => (
            <Proof
              key={id}
              plan={plans.get(id) ?? plan}
              lookId={id}
              zoom={hand.zoom}
              comparedWith={id === modelId ? null : { plan: plans.get(modelId) ?? plan, lookId: modelId }}
              ownFinish={areFinishedApart ? finishWords(plan.looks[id]!.finish) : null}
              isShown={id === shownLookId}
              ballot={ballot}
              onShow={() => {
                showLook(id)
                onClose()
              }}
              onCopy={mayEdit ? () => copy(id) : null}
            />
          ))}
        </div>
      </div>
    </FullPage>
  )
}

/** The shown look and those after it, as many as lie well beside each other. */
function firstChoice(ids: readonly string[], shownId: string): readonly string[] {
  const others = ids.filter((id) => id !== shownId).slice(0, 2)
  return ids.filter((id) => id === shownId || others.includes(id))
}
