import { useState } from 'react'
import { askAgain, askAgainPlainly, VISIBILITY_WORDS } from '../../../shared-core/compare/visibility.ts'
import { useBoard } from '../../session/useBoard.ts'
import { LookCanvas } from '../../frame/picture/LookCanvas.tsx'
import { usePlainWords } from '../client/plainWords.ts'
import { useLockedPlan } from './useLockedPlan.ts'
import type { SinceLock } from './useSinceLock.ts'

const WIDTH_PIXELS = 260

/** Every change since the lock, what moves the picture most first, and whether who said yes has to be asked again. */
export function SinceLockList({ since }: { readonly since: SinceLock }) {
  const isPlain = usePlainWords()
  const { lock: { lock, hasSaidYes }, count, effects, share, trouble } = since
  if (trouble !== '') return <p className="agreed-soft" role="status">{trouble}</p>
  if (count === 0) return <p role="status">Nothing has changed since lock {lock.number}.</p>
  if (effects === null) return <p className="agreed-soft" role="status">Comparing with lock {lock.number}{share === null ? '' : ` (${Math.round(share * 100)} %)`}…</p>
  const again = isPlain ? askAgainPlainly(effects, lock.askAgainSteps, hasSaidYes) : askAgain(effects, lock.askAgainSteps)
  return (
    <div className="since-lock">
      <BeforeAndNow planHash={lock.planHash} lookId={lock.lookId} number={lock.number} />
      <div>
        <p className="since-lock-verdict" data-ask-again={again.isNeeded} role="status">{again.words}.</p>
        <ol className="since-lock-list" aria-label={`Since lock ${lock.number}`}>
          {effects.changes.map(({ key, visibility, plain, ...trade }) => ({ key, visibility, ...(isPlain ? plain : trade) })).map(({ key, words, visibility, effects: does }) => (
            <li key={key} data-visibility={visibility}>
              <span className="since-lock-visibility">{VISIBILITY_WORDS[visibility]}</span>
              <span>{words}</span>
              {visibility !== 'not-visible' && does.length > 0 && <span className="agreed-soft">{does.slice(0, 3).join(', ')}</span>}
            </li>
          ))}
        </ol>
      </div>
    </div>
  )
}

/** The Frame now; held, as it was locked. */
function BeforeAndNow({ planHash, lookId, number }: { readonly planHash: string; readonly lookId: string; readonly number: number }) {
  const now = useBoard((board) => board.plan)
  const locked = useLockedPlan(planHash)
  const [isHeld, setHeld] = useState(false)
  const plan = isHeld && locked?.ok ? locked.value : now
  const camera = plan.looks[lookId]?.camera
  if (camera === undefined) return null
  const height = Math.round((WIDTH_PIXELS * camera.sensorHeightMillimetres) / camera.sensorWidthMillimetres)
  const hold = (held: boolean) => () => setHeld(held)
  return (
    <figure className="since-lock-picture">
      <div style={{ width: WIDTH_PIXELS, height }}>
        <LookCanvas plan={plan} lookId={lookId} widthPixels={WIDTH_PIXELS} heightPixels={height} description={isHeld ? `As in lock ${number}` : 'As it is now'} />
      </div>
      <figcaption>
        <button
          type="button"
          className="button button-lined"
          aria-pressed={isHeld}
          onPointerDown={hold(true)}
          onPointerUp={hold(false)}
          onPointerLeave={hold(false)}
          onPointerCancel={hold(false)}
          onBlur={hold(false)}
          onKeyDown={(event) => (event.key === ' ' || event.key === 'Enter') && setHeld(true)}
          onKeyUp={hold(false)}
        >
          {isHeld ? `As in lock ${number}` : `Hold: as in lock ${number}`}
        </button>
      </figcaption>
    </figure>
  )
}
