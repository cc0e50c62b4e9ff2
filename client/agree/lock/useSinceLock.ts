import { useEffect, useMemo, useState } from 'react'
import { compareLooks } from '../../../shared-core/compare/changes.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { useBoard } from '../../session/useBoard.ts'
import { useLocks, useNotes } from '../../notes/useNotes.ts'
import { standingLock, type LockView } from '../../notes/engine/locks.ts'
import { useLookEffects, type FoundEffects } from '../compare/useLookEffects.ts'
import { useLockedPlan } from './useLockedPlan.ts'

/** A plan is compared once it has rested: nobody needs every step of a hand judged against a lock. */
const REST_MS = 900

export interface SinceLock extends FoundEffects {
  readonly lock: LockView
  /** How many single things differ; null while the locked plan is not here. */
  readonly count: number | null
}

/** The lock that stands for a look, and what has changed since; null where none stands. */
export function useSinceLock(lookId: string): SinceLock | null {
  const locks = useLocks()
  const view = standingLock(locks, lookId)
  const plan = useRested(useBoard((board) => (board.reopened === null ? board.plan : null)))
  const locked = useLockedPlan(view?.lock.planHash ?? null)
  const before = locked?.ok ? locked.value : null
  const count = useMemo(
    () => (before === null || plan === null || plan.looks[lookId] === undefined ? null : compareLooks(before, lookId, plan, lookId).changes.length),
    [before, plan, lookId],
  )
  const asked = useMemo(
    () => (before === null || plan === null || count === null || count === 0 ? null : { before, lookBefore: lookId, after: plan, lookAfter: lookId }),
    [before, plan, count, lookId],
  )
  const found = useLookEffects(asked)
  if (view === null) return null
  return { ...found, lock: view, count, trouble: locked !== null && !locked.ok ? locked.words : found.trouble }
}

function useRested(plan: Plan | null): Plan | null {
  const [rested, setRested] = useState(plan)
  useEffect(() => {
    const timer = setTimeout(() => setRested(plan), REST_MS)
    return () => clearTimeout(timer)
  }, [plan])
  return rested
}

/** The one being made for a look, which takes the relay some seconds. */
export function useIsLocking(lookId: string): boolean {
  return useNotes((notes) => notes.onTheWay.some((command) => command.do === 'lock.make' && command.lookId === lookId))
}
