import { useEffect, useState } from 'react'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { askDesk } from '../../ask/pageDesk.ts'
import type { StandInLines } from './standInLines.ts'

const SLOT = 'stand-ins'

/** The words under the stand-ins of a look as it is; null while they are worked out. */
export function useStandInLines(plan: Plan, lookId: string): { readonly found: StandInLines | null; readonly trouble: string } {
  const [told, setTold] = useState<{ readonly plan: Plan | null; readonly found: StandInLines | null; readonly trouble: string }>(
    { plan: null, found: null, trouble: '' })
  useEffect(() => {
    askDesk().order({ kind: 'stand-ins', slot: SLOT, plan, lookId }, {
      answered: (found) => setTold({ plan, found, trouble: '' }),
      failed: (trouble) => setTold({ plan, found: null, trouble }),
    })
    return () => askDesk().cancel(SLOT)
  }, [plan, lookId])
  return told.plan === plan ? told : { found: null, trouble: '' }
}
