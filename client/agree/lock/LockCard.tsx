import { useEffect, useState } from 'react'
import type { LockVerdict } from '../../../shared-core/notes/verifyLock.ts'
import { keptAddress, type Answer } from '../../connection/api.ts'
import { checkLock, keptOf } from '../../notes/engine/keptThings.ts'
import type { LockView } from '../../notes/engine/locks.ts'
import { useNotes, useNotesStore, useReopening } from '../../notes/useNotes.ts'
import { usePlainWords } from '../client/plainWords.ts'
import { cameraWords, LightLines } from './LockNumbers.tsx'
import { useLockedLights } from './useLockedLights.ts'
import { useLockedPlan } from './useLockedPlan.ts'
import { YesHere } from './YesHere.tsx'

interface LockCardProps {
  readonly view: LockView
  readonly onLookedAt: () => void
}

/** A lock as it stands: picture, numbers, conditions, stand-ins, who said yes on what screen, and whether it is whole. */
export function LockCard({ view, onLookedAt }: LockCardProps) {
  const { id, lock, yeses } = view
  const seatId = useNotes((notes) => notes.seat.seatId)
  const laterNumber = useNotes((notes) => (view.supersededBy === null ? null : (notes.kept.locks[view.supersededBy]?.number ?? null)))
  const isPlain = usePlainWords()
  const reopening = useReopening()
  const [trouble, setTrouble] = useState('')
  return (
    <article className="lock-card" aria-label={`Lock ${lock.number}`} data-superseded={view.supersededBy !== null}>
      <img className="lock-card-picture" src={keptAddress(seatId, lock.pictureHash)} alt={`${lock.lookName} as it was locked`} />
      <div className="lock-card-words">
        <h3>Lock {lock.number} <span className="agreed-soft">{lock.lookName}{laterNumber === null ? '' : ` · superseded by lock ${laterNumber}`}</span></h3>
        <p>Locked by {lock.by.name}, {moment(lock.by.atMs)}</p>
        {lock.conditions !== '' && <p>Conditions: {lock.conditions}</p>}
        <p className="agreed-soft">The client is asked again past {lock.askAgainSteps} visible {lock.askAgainSteps === 1 ? 'step' : 'steps'}</p>
        <Seal view={view} />
        {!isPlain && <LockedNumbers view={view} />}
        {lock.standIns.length === 0 ? <p className="agreed-soft">Stand-ins were not seen</p> : (
          <ul className="lock-card-stand-ins" aria-label="Stand-ins as they were seen">
            {lock.standIns.map(({ words, pictureHash }) => (
              <li key={words}><img src={keptAddress(seatId, pictureHash)} alt={`On ${words} skin`} /><span>{words}</span></li>
            ))}
          </ul>
        )}
        <ul className="lock-card-yeses" aria-label="Who said yes">
          {yeses.map(({ id: yesId, yes, check }) => (
            <li key={yesId}>
              <strong>{yes.by.name}</strong> said yes, {moment(yes.by.atMs)}{yes.words === '' ? '' : `: ${yes.words}`}
              <span className="agreed-soft"> · {check === null ? 'screen not checked' : screenWords(check.result)}</span>
            </li>
          ))}
          {yeses.length === 0 && <li className="agreed-soft">Nobody has said yes yet</li>}
        </ul>
        {view.supersededBy === null && <YesHere view={view} />}
        <p className="agreed-row">
          <button
            type="button"
            className="button button-lined"
            onClick={() => void reopening.lock(id).then((words) => (words === null ? onLookedAt() : setTrouble(words)))}
          >
            Look at it on the board
          </button>
          {trouble !== '' && <span role="alert">{trouble}</span>}
        </p>
      </div>
    </article>
  )
}

/** Whether the lock is what it was when it was made. */
function Seal({ view }: { readonly view: LockView }) {
  const store = useNotesStore()
  const locks = useNotes((notes) => notes.kept.locks)
  const yeses = useNotes((notes) => notes.kept.yeses)
  const [verdict, setVerdict] = useState<Answer<LockVerdict> | null>(null)
  const { id, chainEnd } = view
  useEffect(() => {
    let isWanted = true
    const { seat, kept } = store.getState()
    void checkLock(seat, { ...kept, locks, yeses }, id, keptOf(seat.seatId)).then((found) => isWanted && setVerdict(found))
    return () => { isWanted = false }
  }, [store, locks, yeses, id])
  if (verdict === null) return <p className="agreed-soft" role="status">Checking the seal…</p>
  if (!verdict.ok) return <p className="agreed-soft" role="status">The seal cannot be checked now. {verdict.words}</p>
  if (verdict.value.intact) return <p role="status">As locked: plan, pictures and every yes match their seal <span className="agreed-soft">{chainEnd.slice(0, 8)}</span></p>
  return <p className="lock-card-broken" role="alert">This does not match its seal. {verdict.value.problems.join(' ')}</p>
}

/** Camera of the locked plan, and its lights as they were predicted then: the numbers that were locked, not new ones. */
function LockedNumbers({ view: { lock } }: { readonly view: LockView }) {
  const locked = useLockedPlan(lock.planHash)
  const lights = useLockedLights(lock.predictionHash)
  if (locked === null || !locked.ok || lights === null) return null
  const look = locked.value.looks[lock.lookId]
  if (look === undefined) return null
  return (
    <details>
      <summary>{cameraWords(look.camera)}</summary>
      <LightLines look={look} lights={lights} />
    </details>
  )
}

function screenWords({ nightTint, tooDim, neutralSurround }: { readonly nightTint: boolean; readonly tooDim: boolean; readonly neutralSurround: boolean }): string {
  const faults = [nightTint && 'tinted for the night', tooDim && 'too dim', !neutralSurround && 'not on a neutral surround'].filter((words) => words !== false)
  return faults.length === 0 ? 'screen checked' : `screen checked: ${faults.join(', ')}`
}

function moment(atMs: number): string {
  return new Date(atMs).toLocaleString(undefined, { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' })
}
