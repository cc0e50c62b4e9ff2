import { z } from 'zod'
import { applyEdit, type PlanChange, type PlanEdit } from '../../shared-core/plan/edit.ts'
import { branchAt } from '../../shared-core/plan/edits/changing.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { schemaAt } from '../../shared-core/plan/schema/schemaAt.ts'
import type { Person } from './board.ts'

/**
 * The plan with every edit that is still in a hand laid over it. A hand counts only if its owner may write, and only if
 * its edit leaves a plan the schema allows with the shown look still in it: others' hands come over the wire. One's own
 * hand is laid last, so that it wins on one's own screen.
 */
export function withHands(plan: Plan, lookId: string, ownHand: PlanEdit | null, people: readonly Person[]): Plan {
  const laid = people.filter(handCounts).reduce((under, { inHand }) => layOver(under, lookId, inHand), plan)
  return layOver(laid, lookId, ownHand)
}

function handCounts(person: Person): boolean {
  return !person.isSelf && person.inHand !== null && (person.role !== 'client' || person.hasPen)
}

function layOver(plan: Plan, lookId: string, edit: PlanEdit | null): Plan {
  if (edit === null || !edit.changes.every((change) => fits(plan, change))) return plan
  const laid = applyEdit(plan, edit)
  return laid.looks[lookId] === undefined ? plan : laid
}

/** Whether one change meets a place that exists and sets what the schema allows there. */
function fits(plan: Plan, change: PlanChange): boolean {
  const parent = change.path.slice(0, -1)
  if (change.path.includes('__proto__') || branchAt(plan, parent) === undefined) return false
  if ('remove' in change) return schemaAt(parent) instanceof z.ZodRecord
  return schemaAt(change.path)?.safeParse(change.set).success === true
}
