import type { Json, PlanChange, PlanEdit } from '../edit.ts'
import { LIMITS, type Plan } from '../schema/plan.ts'
import type { Room } from '../schema/room.ts'
import { newId } from '../newId.ts'
import type { Result } from '../result.ts'
import { addBranch, removeBranch } from './adding.ts'
import { branchAt, changeBranch, sameJson, type EditResult, type Patch } from './changing.ts'

type TeamMember = Plan['team'][string]

/** Gives the job another title; cut at the length the plan keeps. */
export function renameJob(plan: Plan, title: string): EditResult {
  return changeBranch(plan, 'renameJob', [], { title })
}

/** Puts another brief in place of the one there is, whole. */
export function changeBrief(plan: Plan, brief: string): EditResult {
  return changeBranch(plan, 'changeBrief', [], { brief })
}

/** Changes any measures, surfaces or supply of the room, each within its bounds. */
export function changeRoom(plan: Plan, patch: Patch<Room>): EditResult {
  return changeBranch(plan, 'changeRoom', ['room'], patch)
}

/** Adds a person to the team, while there is room. */
export function addTeamMember(
  plan: Plan, member: TeamMember,
): Result<{ readonly edit: PlanEdit; readonly memberId: string }> {
  const memberId = newId()
  const added = addBranch(plan, 'addTeamMember', ['team', memberId], member, LIMITS.team)
  return added.ok ? { ...added, memberId } : added
}

/** Changes a name or a job in the team; refused when that person is no longer in it. */
export function changeTeamMember(plan: Plan, memberId: string, patch: Patch<TeamMember>): EditResult {
  return changeBranch(plan, 'changeTeamMember', ['team', memberId], patch)
}

/** Takes a person off the team; refused when they are no longer in it. */
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
