import { useEffect, useState } from 'react'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { Answer } from '../../connection/api.ts'
import { keptOf, keptPlan } from '../../notes/engine/keptThings.ts'
import { useNotes } from '../../notes/useNotes.ts'

/** What is kept under a hash never changes: fetched once a page, and the same object each time. */
const plans = new Map<string, Promise<Answer<Plan>>>()

/** The plan a lock was made of; null while it is fetched, and where it cannot be had. */
export function useLockedPlan(planHash: string | null): Answer<Plan> | null {
  const seatId = useNotes((notes) => notes.seat.seatId)
  const [found, setFound] = useState<{ readonly hash: string; readonly plan: Answer<Plan> } | null>(null)
  useEffect(() => {
    if (planHash === null) return
    let isWanted = true
    const kept = plans.get(planHash) ?? keptPlan(planHash, keptOf(seatId))
    plans.set(planHash, kept)
    void kept.then((plan) => {
      if (!plan.ok) plans.delete(planHash)
      if (isWanted) setFound({ hash: planHash, plan })
    })
    return () => { isWanted = false }
  }, [planHash, seatId])
  return found?.hash === planHash ? found.plan : null
}
