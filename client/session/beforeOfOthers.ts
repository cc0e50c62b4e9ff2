import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Person } from './board.ts'

/** What the Before of everybody else shows, as far as this page has been there to see it. */
export interface BeforeOfOthers {
  /** The plan as it was before a change of these seats. */
  changed(seatIds: readonly string[], before: Plan): void
  /** Takes note of whose Before is kept, and of the plan at the moment it came to be. */
  people(people: readonly Person[], plan: Plan): void
  /** Null where it came before this page. */
  of(seatId: string): Plan | null
}

export function createBeforeOfOthers(): BeforeOfOthers {
  const lastChange = new Map<string, Plan>()
  /** Null: kept already when this page first saw the person. */
  const kept = new Map<string, Plan | null>()
  const met = new Set<string>()
  return {
    changed(seatIds, before) {
      for (const seatId of seatIds) lastChange.set(seatId, before)
    },
    people(people, plan) {
      for (const { seatId, sees, isSelf } of people) {
        if (isSelf) continue
        if (!sees.beforeKept) kept.delete(seatId)
        else if (!kept.has(seatId)) kept.set(seatId, met.has(seatId) ? plan : null)
        met.add(seatId)
      }
    },
    of: (seatId) => (kept.has(seatId) ? kept.get(seatId)! : (lastChange.get(seatId) ?? null)),
  }
}
