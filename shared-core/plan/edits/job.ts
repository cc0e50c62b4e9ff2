import type { Json, PlanChange, PlanEdit } from '../edit.ts'
import { LIMITS, type Plan } from '../schema/plan.ts'
import type { Room } from '../schema/room.ts'
import { newId } from '../newId.ts'
import type { Result } from '../result.ts'
import { addBranch, removeBranch } from './adding.ts'
import { branchAt, changeBranch, sameJson, type EditResult, type Patch } from './changing.ts'

type TeamMember = Plan['team'][string]

export function renameJob(plan: Plan, title: string): EditResult {
  return changeBranch(plan, 'renameJob', [], { title })
}

export function changeBrief(plan: Plan, brief: string): EditResult {
  return changeBranch(plan, 'changeBrief', [], { brief })
}

export function changeRoom(plan: Plan, patch: Patch<Room>): EditResult {
  return changeBranch(plan, 'changeRoom', ['room'], patch)
}

export function addTeamMember(
  plan: Plan, member: TeamMember,
): Result<{ readonly edit: PlanEdit; readonly memberId: string }> {
  const memberId = newId()
  const added = addBranch(plan, 'addTeamMember', ['team', memberId], member, LIMITS.team)
  return added.ok ? { ...added, memberId } : added
}

export function changeTeamMember(plan: Plan, memberId: string, patch: Patch<TeamMember>): EditResult {
  return changeBranch(plan, 'changeTeamMember', ['team', memberId], patch)
}

export function removeTeamMember(plan: Plan, memberId: string): EditResult {
  return removeBranch(plan, 'removeTeamMember', ['team', memberId])
}

/**
 * Puts another job in the place of this one, as when a job file is dropped onto the board: one edit, so that one undo
 * brings the old one back.
 */
export function replaceJob(plan: Plan, by: Plan): EditResult {
  const changes = Object.entries(by)
    .filter(([key, value]) => !sameJson(branchAt(plan, [key]), value as Json))
    .map(([key, value]): PlanChange => ({ path: [key], set: value as Json }))
  return { ok: true, edit: { name: 'replaceJob', changes } }
}
