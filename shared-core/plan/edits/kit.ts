import type { PlanEdit } from '../edit.ts'
import type { Gel, Head, Modifier } from '../schema/kit.ts'
import type { Light } from '../schema/look.ts'
import { LIMITS, type Plan } from '../schema/plan.ts'
import { newId } from '../newId.ts'
import { refuse, type Result } from '../result.ts'
import { addBranch, removeBranch } from './adding.ts'
import { changeBranch, type EditResult, type Patch } from './changing.ts'
import { own } from './lookAt.ts'
import { usualGel, usualHead, usualModifier } from '../usual/kit.ts'

type Added<Id extends string> = Result<{ readonly edit: PlanEdit } & { readonly [Key in Id]: string }>

/** Adds a head, usual in all that is not given. Refused when its lowest power is not below its full power. */
export function addHead(plan: Plan, head: Partial<Head>): Added<'headId'> {
  const headId = newId()
  const whole = { ...usualHead, ...head }
  const refusal = rangeRefusal(whole)
  if (refusal) return refusal
  const added = addBranch(plan, 'addHead', ['heads', headId], whole, LIMITS.kitEntries)
  return added.ok ? { ...added, headId } : added
}

/** Changes any leaves of a head. Refused when its lowest power would not be below its full power. */
export function changeHead(plan: Plan, headId: string, patch: Patch<Head>): EditResult {
  const head = own(plan.heads, headId)
  const refusal = head && rangeRefusal({ ...head, ...patch } as Head)
  return refusal ?? changeBranch(plan, 'changeHead', ['heads', headId], patch)
}

/** Takes a head out of the kit; refused, with their letters, while lights stand on it. */
export function removeHead(plan: Plan, headId: string): EditResult {
  return inUse(plan, 'head', (light) => light.headId === headId) ?? removeBranch(plan, 'removeHead', ['heads', headId])
}

/** Adds a modifier, usual in all that is not given. */
export function addModifier(plan: Plan, modifier: Partial<Modifier>): Added<'modifierId'> {
  const modifierId = newId()
  const whole = { ...usualModifier, ...modifier }
  const added = addBranch(plan, 'addModifier', ['modifiers', modifierId], whole, LIMITS.kitEntries)
  return added.ok ? { ...added, modifierId } : added
}

/** Changes any leaves of a modifier, for every light that carries it. */
export function changeModifier(plan: Plan, modifierId: string, patch: Patch<Modifier>): EditResult {
  return changeBranch(plan, 'changeModifier', ['modifiers', modifierId], patch)
}

/** Takes a modifier out of the kit; refused, with their letters, while lights carry it. */
export function removeModifier(plan: Plan, modifierId: string): EditResult {
  return inUse(plan, 'modifier', (light) => light.modifierId === modifierId)
    ?? removeBranch(plan, 'removeModifier', ['modifiers', modifierId])
}

/** Adds a sheet to the drawer, usual in all that is not given. */
export function addGel(plan: Plan, gel: Pick<Gel, 'name' | 'source'> & Partial<Gel>): Added<'gelId'> {
  const gelId = newId()
  const added = addBranch(plan, 'addGel', ['gels', gelId], { ...usualGel, ...gel }, LIMITS.kitEntries)
  return added.ok ? { ...added, gelId } : added
}

/** Changes a sheet. Its source is one thing and is given whole. */
export function changeGel(plan: Plan, gelId: string, patch: Partial<Gel>): EditResult {
  return changeBranch(plan, 'changeGel', ['gels', gelId], patch)
}

/** Takes a sheet out of the drawer; refused, with their letters, while it is on lights. */
export function removeGel(plan: Plan, gelId: string): EditResult {
  return inUse(plan, 'gel', (light) => light.gelIds.includes(gelId)) ?? removeBranch(plan, 'removeGel', ['gels', gelId])
}

function rangeRefusal(head: Pick<Head, 'lowestEnergyJoules' | 'fullEnergyJoules'>) {
  return head.lowestEnergyJoules < head.fullEnergyJoules
    ? null
    : refuse('The lowest power of a head is below its full power.')
}

/** A refusal that names who uses the thing, or null. */
function inUse(plan: Plan, thing: string, uses: (light: Light) => boolean) {
  const users = Object.values(plan.looks).flatMap((look) =>
    Object.values(look.lights).filter(uses).map((light) => `${light.letter} of “${look.name}”`),
  )
  if (users.length === 0) return null
  const named = users.slice(0, 4).join(', ') + (users.length > 4 ? ` and ${users.length - 4} more` : '')
  return refuse(`This ${thing} is on light ${named}. Take it off there first.`)
}
