import { useState } from 'react'
import type { Look } from '../../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { useBoard } from '../../session/useBoard.ts'
import { ask } from '../../session/pageStore.ts'
import { useNotes, useNotesStore } from '../../notes/useNotes.ts'
import { STAND_INS_SEEN_WORDS, useStandInsSeen } from '../standIns/standInsSeen.ts'
import { LookCanvas } from '../../frame/picture/LookCanvas.tsx'
import { cameraWords, LightLines } from './LockNumbers.tsx'
import { ScreenUnchecked } from './ScreenUnchecked.tsx'
import { useIsLocking } from './useSinceLock.ts'

const USUAL_STEPS = 2
const FEWEST_STEPS = 0.5
const MOST_STEPS = 20
const WIDTH_PIXELS = 200

/**
 * Freezes the look on the board, shown as it will stand. Photographer only.
 * @param onCancel leaves it; where it is null there is nothing to go back to, and cancelling takes back what was set
 */
export function LockForm({ onCancel }: { readonly onCancel: (() => void) | null }) {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const seatId = useNotes((notes) => notes.seat.seatId)
  const refused = useNotes((notes) => notes.refused)
  const store = useNotesStore()
  const isLocking = useIsLocking(lookId)
  const seen = useStandInsSeen(seatId, plan, lookId)
  const [conditions, setConditions] = useState('')
  const [steps, setSteps] = useState(USUAL_STEPS)
  const lights = useBoard((board) => board.prediction.lights)
  const look = plan.looks[lookId]
  const isSet = conditions !== '' || steps !== USUAL_STEPS
  const notLocked = refused.filter(({ command }) => command.do === 'lock.make')

  return (
    <form
      className="lock-form"
      onSubmit={(event) => {
        event.preventDefault()
        store.getState().send({ do: 'lock.make', lookId, conditions: conditions.trim(), standInsSeen: seen === 'seen', askAgainSteps: steps })
      }}
    >
      {look !== undefined && (
        <div className="lock-form-stands">
          <AsItWillStand plan={plan} lookId={lookId} look={look} />
          <div>
            <p>{cameraWords(look.camera)}</p>
            <LightLines look={look} lights={lights} />
          </div>
        </div>
      )}
      <p>A lock keeps the picture, its numbers and everything it is made from. It is never edited; a later lock takes its place.</p>
      <label>
        <span>Conditions, if any</span>
        <textarea className="field" rows={2} maxLength={2000} value={conditions} placeholder="If the print matches" onChange={(event) => setConditions(event.target.value)} />
      </label>
      <label className="lock-form-steps">
        <span>Ask the client again once the picture has moved by more than</span>
        <input className="field" type="number" min={FEWEST_STEPS} max={MOST_STEPS} step={0.5} value={steps} onChange={(event) => setSteps(Math.min(MOST_STEPS, Math.max(FEWEST_STEPS, event.target.valueAsNumber || USUAL_STEPS)))} />
        <span>visible steps <span className="agreed-soft">(one is just seen side by side)</span></span>
      </label>
      <p className="agreed-row">
        <span>{STAND_INS_SEEN_WORDS[seen]}</span>
        {seen !== 'seen' && <button type="button" className="button button-lined" onClick={() => ask({ kind: 'stand-ins' })}>See the stand-ins</button>}
      </p>
      <ScreenUnchecked words="This screen has not been checked: what you see on it may not be what you lock." />
      {notLocked.map(({ command, words }) => (
        <p key={command.id} className="agreed-row" role="alert">
          <span>Not locked. {words}</span>
          <button type="button" className="button" onClick={() => store.getState().forget(command.id)}>Understood</button>
        </p>
      ))}
      <p className="agreed-row">
        <button type="submit" className="button button-main" disabled={isLocking}>{isLocking ? 'Locking…' : `Lock ${look?.name ?? 'this look'}`}</button>
        {(onCancel !== null || isSet) && (
          <button
            type="button"
            className="button"
            onClick={() => {
              setConditions('')
              setSteps(USUAL_STEPS)
              onCancel?.()
            }}
          >
            Cancel
          </button>
        )}
      </p>
    </form>
  )
}

/** The Frame of the plan as it is now: the relay draws the kept one from the same. */
function AsItWillStand({ plan, lookId, look }: { readonly plan: Plan; readonly lookId: string; readonly look: Look }) {
  const height = Math.round((WIDTH_PIXELS * look.camera.sensorHeightMillimetres) / look.camera.sensorWidthMillimetres)
  return (
    <div className="lock-form-picture">
      <div style={{ width: WIDTH_PIXELS, height }}>
        <LookCanvas plan={plan} lookId={lookId} widthPixels={WIDTH_PIXELS} heightPixels={height} description={`${look.name} as it will be locked`} />
      </div>
    </div>
  )
}
