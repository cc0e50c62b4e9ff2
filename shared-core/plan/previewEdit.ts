import { applyEdit, type PlanEdit } from './edit.ts'
import { crossChecks } from './reading/crossChecks.ts'
import type { Plan } from './schema/plan.ts'
import { overfullRecords } from './schema/limits.ts'

/**
 * The plan as it would be once somebody lets go of what they have in hand. What would not hold together (a head that
 * meanwhile left the kit, a light too many) is not shown: the plan comes back as it was. Takes edits that `readEdit`
 * let through, or our own.
 */
export function previewEdit(plan: Plan, edit: PlanEdit): Plan {
  const after = applyEdit(plan, edit)
  if (after === plan) return plan
  return crossChecks(after).length === 0 && overfullRecords(after).length === 0 ? after : plan
}
