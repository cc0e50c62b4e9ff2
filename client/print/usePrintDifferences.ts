import { useMemo } from 'react'
import { compareLooks } from '../../shared-core/compare/changes.ts'
import type { Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { MARKS_ID } from '../../shared-core/stands/builtAs.ts'
import type { PrintMark } from '../../shared-core/stands/printMark.ts'
import { standChanges, type StandChange } from '../../shared-core/stands/standChanges.ts'
import { digestDifference } from '../../shared-core/stands/standDigest.ts'
import { useLockedPlan } from '../agree/lock/useLockedPlan.ts'
import { useBoard } from '../session/useBoard.ts'
import { usePlanHash } from './usePlanHash.ts'

/** What differs now from what was printed. */
export interface PrintDifferences {
  readonly stands: readonly StandChange[]
  /** Beside the stands, in words. */
  readonly others: readonly string[]
  /** False where the printed plan cannot be had: which stands differ is known by the digests on the print, but not how. */
  readonly isKnownHow: boolean
}

/** Stand by stand in words where the printed plan can be had, else by the digests on the print. Null while it is fetched, and where the look is gone. */
export function usePrintDifferences(mark: PrintMark, keptHash: string | null): PrintDifferences | null {
  const units = useBoard((board) => board.units)
  const plan = useBoard((board) => board.plan)
  const nowHash = usePlanHash(plan)
  const found = useLockedPlan(keptHash)
  return useMemo(() => {
    const look = plan.looks[mark.lookId]
    if (look === undefined) return null
    if (mark.planHashStart !== '' && nowHash.startsWith(mark.planHashStart)) return { stands: [], others: [], isKnownHow: true }
    const printed = found?.ok === true ? found.value : null
    const before = printed?.looks[mark.lookId]
    if (printed !== null && before !== undefined) {
      return { stands: standChanges(before, plan, mark.lookId, units), others: otherChanges(printed, plan, mark.lookId), isKnownHow: true }
    }
    return keptHash !== null && found === null ? null : byDigest(mark, look)
  }, [mark, plan, nowHash, found, keptHash, units])
}

function byDigest(mark: PrintMark, look: Look): PrintDifferences {
  const { standIds, goneCount } = digestDifference(mark.digests, look)
  return {
    stands: standIds.map((standId) => ({ standId, name: nameOf(look, standId), words: ['not as printed; see the rig sheet for how it is now'] })),
    others: goneCount === 0 ? [] : [`${goneCount} printed ${goneCount === 1 ? 'stand is' : 'stands are'} no longer in the look`],
    isKnownHow: false,
  }
}

function nameOf(look: Look, standId: string): string {
  return standId === MARKS_ID ? 'The marks' : (look.lights[standId]?.letter ?? look.pieces[standId]?.label ?? standId)
}

/** Settings that no stand carries. */
const BESIDE_STANDS = /^(camera\/(?!place)|finish\/|subject\/|backdrop\/(?!place)|meter)/

function otherChanges(before: Plan, after: Plan, lookId: string): readonly string[] {
  return compareLooks(before, lookId, after, lookId).changes.filter(({ key }) => BESIDE_STANDS.test(key)).map(({ words }) => words)
}
