import { useMemo } from 'react'
import { useStore } from 'zustand'
import { standChanges } from '../../shared-core/stands/standChanges.ts'
import { useLockedPlan } from '../agree/lock/useLockedPlan.ts'
import { shellKept } from '../connection/shellKept.ts'
import { standingLock } from '../notes/engine/locks.ts'
import { useLocks } from '../notes/useNotes.ts'
import { LookMenu } from '../shell/bar/LookMenu.tsx'
import { useBoard } from '../session/useBoard.ts'

/** First and loudest: whether what stands here is what was agreed, and whether this page can be trusted to be of now. */
export function RigWarnings() {
  const lookId = useBoard((board) => board.lookId)
  const plan = useBoard((board) => board.plan)
  const units = useBoard((board) => board.units)
  const connection = useBoard((board) => board.connection)
  const lock = standingLock(useLocks(), lookId)
  const locked = useLockedPlan(lock?.lock.planHash ?? null)
  const lockedLook = locked?.ok === true ? locked.value.looks[lookId] : undefined
  const changes = useMemo(
    () => (lockedLook === undefined ? [] : standChanges(lockedLook, plan, lookId, units)),
    [lockedLook, plan, lookId, units],
  )
  const shell = useStore(shellKept)
  const isLive = connection.state === 'live'
  return (
    <>
      {changes.length > 0 && (
        <section className="rig-stale" aria-label={`Not as in lock ${lock!.lock.number}`}>
          <h3>Not as in lock {lock!.lock.number}: {changes.map(({ name }) => name).join(', ')}</h3>
          <ul>{changes.map(({ standId, name, words }) => <li key={standId}><b>{name}</b> {words.join(', ')}</li>)}</ul>
        </section>
      )}
      <div className="rig-lock">
        <LookMenu />
        <span>{lock === null ? 'Draft: this look is not locked' : `Lock ${lock.lock.number}${lockedLook === undefined ? ', not compared: what was locked is not on this device' : changes.length === 0 ? ', the plan is as agreed' : ''}`}</span>
        {!isLive && <span className="rig-away">{connection.words}</span>}
        {shell.kept === false && <span className="rig-away">{shell.words}</span>}
      </div>
    </>
  )
}
