import type { Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'

/** The job's looks in the order its people gave them; of two that share a place, the same one first on every device. */
export function looksInOrder(plan: Plan): readonly (readonly [lookId: string, look: Look])[] {
  return Object.entries(plan.looks).sort(([idA, a], [idB, b]) => a.order - b.order || (idA < idB ? -1 : 1))
}

/** The look that opens first. Throws when there is none: no reader returns such a plan. */
export function firstLookId(plan: Plan): string {
  const [first] = looksInOrder(plan)
  if (first === undefined) throw new Error('A plan holds at least one look')
  return first[0]
}
