import type { PlanChange, PlanEdit } from '../edit.ts'
import { namedAreas, planes, snagKeyText, type Acceptance, type Light } from '../schema/look.ts'
import { LIMITS, type Plan } from '../schema/plan.ts'
import { refuse } from '../result.ts'
import { addBranch, removeBranch } from './adding.ts'
import { changeBranch, type EditResult } from './changing.ts'
import { lookIn, own } from './lookAt.ts'

/** What the checks say of a snag, as far as accepting it goes. */
export interface AcceptedSnag {
  readonly key: string
  readonly severity: Acceptance['severity']
  readonly value: number
  readonly message: string
}

/**
 * "That's the look": puts on record that a person saw what a check says and wants it so. Accepting again, as when it
 * has grown worse, takes the place of what was accepted before.
 */
export function acceptSnag(plan: Plan, lookId: string, snag: AcceptedSnag, by: string, atMs: number): EditResult {
  const look = lookIn(plan, lookId)
  if (!look) return refuse('That look is no longer in the job.')
  if (!snagKeyText.safeParse(snag.key).success) return refuse('That is nothing a check says.')
  if (by.trim() === '') return refuse('Whoever accepts gives a name, so that others can ask them.')
  const acceptance: Acceptance = {
    by: by.trim().slice(0, 120),
    atMs: Math.max(0, Math.round(atMs)),
    severity: snag.severity,
    value: Math.min(Math.max(snag.value, -1_000_000), 1_000_000),
    message: snag.message.slice(0, 300),
  }
  // What is accepted again needs no more room.
  const most = own(look.accepted, snag.key) ? Infinity : LIMITS.acceptedPerLook
  return addBranch(plan, 'acceptSnag', ['looks', lookId, 'accepted', snag.key], acceptance, most)
}

/** Takes an acceptance back: the check speaks again. */
export function reopenSnag(plan: Plan, lookId: string, key: string): EditResult {
  return removeBranch(plan, 'reopenSnag', ['looks', lookId, 'accepted', key])
}

/** Marks an area or added point as one that must read true; what is marked already stays as it is. */
export function markTrueArea(plan: Plan, lookId: string, areaId: string): EditResult {
  const look = lookIn(plan, lookId)
  if (!look) return refuse('That look is no longer in the job.')
  const isArea = (namedAreas as readonly string[]).includes(areaId) || own(look.points, areaId) !== undefined
  if (!isArea) return refuse('That is neither an area nor a point of this look.')
  if (own(look.mustReadTrue, areaId)) return { ok: true, edit: { name: 'markTrueArea', changes: [] } }
  const path = ['looks', lookId, 'mustReadTrue', areaId]
  return addBranch(plan, 'markTrueArea', path, { cleanPlatePlanned: false }, LIMITS.trueAreasPerLook)
}

/** The area may take the colour of the light again. */
export function unmarkTrueArea(plan: Plan, lookId: string, areaId: string): EditResult {
  return removeBranch(plan, 'unmarkTrueArea', ['looks', lookId, 'mustReadTrue', areaId])
}

/** Plans, or no longer plans, a clean plate for an area that must read true. */
export function planCleanPlate(plan: Plan, lookId: string, areaId: string, planned: boolean): EditResult {
  return changeBranch(plan, 'planCleanPlate', ['looks', lookId, 'mustReadTrue', areaId], { cleanPlatePlanned: planned })
}

/** How many flashes the look will take, tests too; null while nobody knows. */
export function planFrames(plan: Plan, lookId: string, framesPlanned: number | null): EditResult {
  return changeBranch(plan, 'planFrames', ['looks', lookId], { framesPlanned })
}

/**
 * Puts the lights in the order they are usually set up in: background first, then edge, shadow side, front and
 * product; within a plane the order stays.
 */
export function setUpByPlane(plan: Plan, lookId: string): EditResult {
  const look = lookIn(plan, lookId)
  if (!look) return refuse('That look is no longer in the job.')
  const rank = (light: Light): number => planes.indexOf(light.plane)
  const ordered = Object.entries(look.lights)
    .sort(([, a], [, b]) => rank(a) - rank(b) || a.setUpOrder - b.setUpOrder)
  const changes = ordered.flatMap(([id, light], order): PlanChange[] =>
    light.setUpOrder === order ? [] : [{ path: ['looks', lookId, 'lights', id, 'setUpOrder'], set: order }])
  return { ok: true, edit: { name: 'setUpByPlane', changes } satisfies PlanEdit }
}
