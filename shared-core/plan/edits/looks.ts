import type { PlanEdit } from '../edit.ts'
import type { Look } from '../schema/look.ts'
import { LIMITS, type Plan } from '../schema/plan.ts'
import { newId } from '../newId.ts'
import { refuse, type Result } from '../result.ts'
import { addBranch, removeBranch } from './adding.ts'
import type { EditResult } from './changing.ts'
import { lookIn } from './lookAt.ts'
import { usualLook } from '../usual/look.ts'

type LookResult = Result<{ readonly edit: PlanEdit; readonly lookId: string }>

/** A bare look: camera, subject and backdrop where they usually stand, and no light yet. */
export function addLook(plan: Plan, look: Partial<Look> = {}): LookResult {
  const name = look.name ?? `Look ${Object.keys(plan.looks).length + 1}`
  return placeLook(plan, 'addLook', { ...usualLook, order: nextOrder(plan), ...look, name })
}

/**
 * A copy beside the look it was made from. Lights and pieces keep their ids, so that the two can be compared light by
 * light.
 */
export function duplicateLook(plan: Plan, lookId: string, name?: string): LookResult {
  const look = lookIn(plan, lookId)
  if (!look) return refuse('That look is no longer in the job.')
  const copyName = name ?? `${look.name.slice(0, 110)}, copy`
  return placeLook(plan, 'duplicateLook', { ...look, name: copyName, order: nextOrder(plan) })
}

/** Takes a look out. The last one stays, since a job without a look shows nothing. */
export function removeLook(plan: Plan, lookId: string): EditResult {
  if (!lookIn(plan, lookId)) return refuse('That look is no longer in the job.')
  if (Object.keys(plan.looks).length === 1) return refuse('A job keeps at least one look.')
  return removeBranch(plan, 'removeLook', ['looks', lookId])
}

function placeLook(plan: Plan, name: string, look: Look): LookResult {
  const lookId = newId()
  const added = addBranch(plan, name, ['looks', lookId], look, LIMITS.looks)
  return added.ok ? { ...added, lookId } : added
}

function nextOrder(plan: Plan): number {
  const last = Math.max(0, ...Object.values(plan.looks).map((look) => look.order))
  return Math.min(Math.floor(last) + 1, 1_000)
}
