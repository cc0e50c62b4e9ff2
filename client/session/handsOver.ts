import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import { branchAt } from '../../shared-core/plan/edits/changing.ts'
import { previewEdit } from '../../shared-core/plan/previewEdit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Person } from './board.ts'

/**
 * The plan with every edit that is still in a hand laid over it. A hand counts only if its owner may write, and only if
 * it leaves a plan that holds together, with the shown look still in it. One's own hand is laid last, so that it wins on
 * one's own screen.
 */
export function withHands(plan: Plan, lookId: string, ownHand: PlanEdit | null, people: readonly Person[]): Plan {
  const laid = handsThatCount(people).reduce((under, inHand) => layOver(under, lookId, inHand), plan)
  return layOver(laid, lookId, ownHand)
}

/** What others who may write have in hand. */
export function handsThatCount(people: readonly Person[]): readonly PlanEdit[] {
  return people.flatMap(({ isSelf, inHand, role, hasPen }) => (isSelf || inHand === null || (role === 'client' && !hasPen) ? [] : [inHand]))
}

function layOver(plan: Plan, lookId: string, edit: PlanEdit | null): Plan {
  // What a hand holds may have been removed meanwhile; laying it over nothing would make half a light.
  if (edit === null || !edit.changes.every(({ path }) => branchAt(plan, path.slice(0, -1)) !== undefined)) return plan
  const laid = previewEdit(plan, edit)
  return laid.looks[lookId] === undefined ? plan : laid
}
