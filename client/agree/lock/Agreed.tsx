import { useState } from 'react'
import { FullPage } from '../../controls/FullPage.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { useLocks } from '../../notes/useNotes.ts'
import { LockCard } from './LockCard.tsx'
import { LockForm } from './LockForm.tsx'
import './lock.css'
import { SinceLockList } from './SinceLockList.tsx'
import { ThatOnes } from './ThatOnes.tsx'
import { useSinceLock } from './useSinceLock.ts'

/** What is agreed on this look, what has changed since, and what was meant on the way there. */
export function Agreed({ onClose }: { readonly onClose: () => void }) {
  const lookId = useBoard((board) => board.lookId)
  const name = useBoard((board) => board.plan.looks[board.lookId]?.name ?? '')
  const role = useBoard((board) => board.role)
  const isReopened = useBoard((board) => board.reopened !== null)
  const locks = useLocks()
  const since = useSinceLock(lookId)
  const own = locks.filter(({ lock }) => lock.lookId === lookId)
  const others = locks.filter(({ lock }) => lock.lookId !== lookId)
  /** The lock in whose place another is to be set: once there is another, that is done. */
  const [replacedId, setReplacedId] = useState<string | null>(null)
  const mayLock = role === 'photographer' && !isReopened
  return (
    <FullPage title="Agreed" words={since === null ? `${name} is not locked` : `${name}: lock ${since.lock.lock.number} stands`} onClose={onClose}>
      <div className="agreed">
        {since !== null && !isReopened && (
          <section aria-labelledby="agreed-since">
            <h2 id="agreed-since">Since lock {since.lock.lock.number}</h2>
            <SinceLockList since={since} />
          </section>
        )}
        {own.map((view) => <LockCard key={view.id} view={view} onLookedAt={onClose} />)}
        {mayLock && (
          <section aria-labelledby="agreed-lock">
            <h2 id="agreed-lock">{since === null ? 'Lock this look' : 'Lock it anew'}</h2>
            {since === null || since.lock.id === replacedId
              ? <LockForm key={since?.lock.id ?? ''} onCancel={since === null ? null : () => setReplacedId(null)} />
              : <p className="agreed-row"><span>A later lock takes the place of lock {since.lock.lock.number}.</span><button type="button" className="button button-lined" onClick={() => setReplacedId(since.lock.id)}>Lock anew…</button></p>}
          </section>
        )}
        <section aria-labelledby="agreed-ones">
          <h2 id="agreed-ones">That one</h2>
          <ThatOnes onLookedAt={onClose} />
        </section>
        {others.length > 0 && (
          <details className="agreed-others">
            <summary>Locks of other looks ({others.length})</summary>
            {others.map((view) => <LockCard key={view.id} view={view} onLookedAt={onClose} />)}
          </details>
        )}
      </div>
    </FullPage>
  )
}
