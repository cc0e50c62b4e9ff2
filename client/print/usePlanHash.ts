import { useEffect, useState } from 'react'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { planHash } from '../notes/engine/planHash.ts'

/** The name under which the relay would keep a plan; empty until it is worked out. */
export function usePlanHash(plan: Plan): string {
  const [found, setFound] = useState<{ readonly plan: Plan; readonly hash: string } | null>(null)
  useEffect(() => {
    let isWanted = true
    void planHash(plan).then((hash) => isWanted && setFound({ plan, hash }))
    return () => { isWanted = false }
  }, [plan])
  return found?.plan === plan ? found.hash : ''
}
