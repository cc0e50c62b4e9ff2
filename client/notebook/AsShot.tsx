import { Check } from 'lucide-react'
import { useMemo, useState } from 'react'
import { strikeList } from '../../shared-core/notebook/strikeList.ts'
import { FullPage } from '../controls/FullPage.tsx'
import { LookPick } from '../moves/LookPick.tsx'
import { looksInOrder } from '../session/looksInOrder.ts'
import { useBoard } from '../session/useBoard.ts'
import { ShotStand } from './ShotStand.tsx'
import { useAsShot } from './useAsShot.ts'
import { useStandPhotos } from './useStandPhotos.ts'
import './asShot.css'

/** At wrap, before anything is struck: all as planned in one press, then the exceptions, a photograph each, and the strike. */
export function AsShot({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const mayEdit = useBoard((board) => board.mayEdit)
  const lookHere = useBoard((board) => board.lookId)
  const [lookId, setLookId] = useState(lookHere)
  const now = useAsShot(lookId)
  const photos = useStandPhotos(lookId)
  const done = now === null ? 0 : now.stands.filter(({ id }) => now.entryOf(id) !== undefined).length
  return (
    <FullPage onClose={onClose} title="As shot" words="How it truly stood, beside what was planned. Two minutes, before anything is struck.">
      <div className="page-column shot-page">
        <div className="shot-top">
          <LookPick label="Look" value={lookId} options={looksInOrder(plan).map(([id, { name }]) => ({ value: id, label: name }))} onChoose={setLookId} />
          {now !== null && (
            <button type="button" className="button button-main shot-all" aria-disabled={!mayEdit || done === now.stands.length} onClick={now.allAsPlanned}>
              <Check size={20} aria-hidden /> {done > 0 && done < now.stands.length ? 'The rest as planned' : 'All as planned'}
            </button>
          )}
        </div>
        {now === null ? <p className="page-panel shot-card">That look is no longer in the job.</p> : (
          <>
            <p role="status" className="shot-status">
              {done} of {now.stands.length} recorded.
              {photos.waiting > 0 && ` ${photos.waiting} ${photos.waiting === 1 ? 'photograph waits' : 'photographs wait'} on this device for the network: open this page again when there is one.`}
              {photos.trouble !== '' && ` ${photos.trouble}`}
            </p>
            <ol className="shot-stands" aria-label="Stands">
              {now.stands.map((stand) => <ShotStand key={stand.id} stand={stand} now={now} photos={photos} />)}
            </ol>
          </>
        )}
        {plan.looks[lookId] !== undefined && <Strike lookId={lookId} />}
      </div>
    </FullPage>
  )
}

function Strike({ lookId }: { readonly lookId: string }) {
  const plan = useBoard((board) => board.plan)
  const lines = useMemo(() => strikeList(plan, lookId), [plan, lookId])
  return (
    <section className="page-panel shot-card" aria-label="Strike">
      <h3>Then strike, in reverse</h3>
      <ol className="shot-strike">
        {lines.map(({ standId, name, words, cautions }) => (
          <li key={standId}>
            <span className="tape shot-letter">{name}</span>
            <div>
              <p>{words.join('. ')}.</p>
              {cautions.map((one) => <p key={one} className="page-care shot-care">{one}</p>)}
            </div>
          </li>
        ))}
      </ol>
      <p className="page-soft">The usual care. The equipment’s manual, the studio’s rules and local code come first. Two people on packs, large frames and big booms.</p>
    </section>
  )
}
