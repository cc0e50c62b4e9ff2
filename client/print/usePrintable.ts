import { useEffect, useMemo, useState } from 'react'
import { compareLooks } from '../../shared-core/compare/changes.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { keptOf, keptPlan } from '../notes/engine/keptThings.ts'
import { standingLock, type LockView } from '../notes/engine/locks.ts'
import { useLocks, useNotes } from '../notes/useNotes.ts'
import { looksInOrder } from '../session/looksInOrder.ts'
import { useBoard } from '../session/useBoard.ts'
import type { LookToPrint } from './gather.ts'
import { usePlanHash } from './usePlanHash.ts'

/** A look as it may be printed: as it was locked, where that is known, and as it is now. */
export interface Printable {
  readonly lookId: string
  readonly name: string
  readonly lock: LockView | null
  /** Null where nothing is locked, and where the locked plan is not to be had. */
  readonly asLocked: LookToPrint | null
  readonly asNow: LookToPrint
  /** Differences of now from the lock; null where they cannot be told. */
  readonly changeCount: number | null
}

/** The job's looks in their order, each with the states that can be printed. */
export function usePrintable(): readonly Printable[] {
  const plan = useBoard((board) => board.plan)
  const seatId = useNotes((notes) => notes.seat.seatId)
  const locks = useLocks()
  const hash = usePlanHash(plan)
  const lockedPlans = useLockedPlans(locks, seatId)
  return useMemo(() => looksInOrder(plan).map(([lookId, look]): Printable => {
    const lock = standingLock(locks, lookId)
    const locked = lock === null ? undefined : lockedPlans.get(lock.lock.planHash)
    const lockedLook = locked?.looks[lookId]
    const changeCount = locked === undefined || lockedLook === undefined ? null : compareLooks(locked, lookId, plan, lookId).changes.length
    return {
      lookId, name: look.name, lock, changeCount,
      asLocked: lock === null || locked === undefined || lockedLook === undefined ? null
        : { plan: locked, lookId, state: { lockNumber: lock.lock.number, planHash: lock.lock.planHash, words: lockWords(lock) } },
      asNow: { plan, lookId, state: { lockNumber: null, planHash: hash, words: draftWords(lock, changeCount) } },
    }
  }), [plan, locks, lockedPlans, hash])
}

function useLockedPlans(locks: readonly LockView[], seatId: string): ReadonlyMap<string, Plan> {
  const [plans, setPlans] = useState<ReadonlyMap<string, Plan>>(new Map())
  useEffect(() => {
    let isWanted = true
    for (const { lock, supersededBy } of locks) {
      if (supersededBy !== null) continue
      void keptPlan(lock.planHash, keptOf(seatId)).then((kept) => {
        if (isWanted && kept.ok) setPlans((before) => (before.has(lock.planHash) ? before : new Map([...before, [lock.planHash, kept.value]])))
      })
    }
    return () => { isWanted = false }
  }, [locks, seatId])
  return plans
}

function lockWords({ lock, yeses }: LockView): readonly string[] {
  return [
    `Locked by ${lock.by.name}, ${momentWords(lock.by.atMs)}.`,
    ...(lock.conditions === '' ? [] : [`Conditions: ${lock.conditions}`]),
    ...(yeses.length === 0 ? ['Nobody has said yes yet.'] : yeses.map(({ yes }) => `Yes: ${yes.by.name}, ${momentWords(yes.by.atMs)}${yes.words === '' ? '' : `: ${yes.words}`}`)),
  ]
}

function draftWords(lock: LockView | null, changeCount: number | null): readonly string[] {
  if (lock === null) return ['This look was not locked when it was printed.']
  if (changeCount === 0) return [`As in lock ${lock.lock.number}, printed as a draft.`]
  return [changeCount === null ? `Not compared with lock ${lock.lock.number}.` : `${changeCount} ${changeCount === 1 ? 'change' : 'changes'} since lock ${lock.lock.number}, which stands.`]
}

/** "25 Nov 2026, 22:13" */
export function momentWords(atMs: number): string {
  return new Date(atMs).toLocaleString(undefined, { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' })
}
