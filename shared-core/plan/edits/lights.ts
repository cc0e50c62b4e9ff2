import type { Light, Look } from '../schema/look.ts'
import { LIMITS, type Plan } from '../schema/plan.ts'
import type { PlanEdit } from '../edit.ts'
import { fitToHead, onHeadStep } from '../fitToHead.ts'
import { nextLetter } from '../letters.ts'
import { newId } from '../newId.ts'
import { usualLight } from '../usual/light.ts'
import { refuse, type Result } from '../result.ts'
import { addBranch, removeBranch } from './adding.ts'
import { changeBranch, type EditResult, type Patch } from './changing.ts'
import { headOf, lightIn, lookIn, own } from './lookAt.ts'

export type NewLight = Pick<Light, 'headId' | 'modifierId' | 'place' | 'aim'> & Partial<Light>
type LightResult = Result<{ readonly edit: PlanEdit; readonly lightId: string }>

const gone = () => refuse('That light is no longer in the look.')
const lightPath = (lookId: string, lightId: string) => ['looks', lookId, 'lights', lightId]

/** Sets up another light, with the next free letter and an eighth of full power unless told otherwise. */
export function addLight(plan: Plan, lookId: string, light: NewLight): LightResult {
  const look = lookIn(plan, lookId)
  const head = own(plan.heads, light.headId)
  if (!look) return refuse('That look is no longer in the job.')
  if (!head) return refuse('That head is not in the kit.')
  if (!own(plan.modifiers, light.modifierId)) return refuse('That modifier is not in the kit.')
  const energyJoules = fitToHead(head, head.fullEnergyJoules / 8)
  return placeLight(plan, 'addLight', lookId, { ...usualLight, ...turnInSetUp(look), energyJoules, ...light })
}

/** The same light again, half a metre to camera right, with its own letter. */
export function duplicateLight(plan: Plan, lookId: string, lightId: string): LightResult {
  const look = lookIn(plan, lookId)
  const light = lightIn(plan, lookId, lightId)
  if (!look || !light) return gone()
  const place = { ...light.place, xMetres: Math.min(light.place.xMetres + 0.5, 50) }
  return placeLight(plan, 'duplicateLight', lookId, { ...light, ...turnInSetUp(look), place })
}

/** Takes a light out of the set; refused when it is no longer there. */
export function removeLight(plan: Plan, lookId: string, lightId: string): EditResult {
  return removeBranch(plan, 'removeLight', lightPath(lookId, lightId))
}

/**
 * Changes any leaves of a light. A letter that another light of the look carries, and kit that is not there, are
 * refused.
 */
export function changeLight(plan: Plan, lookId: string, lightId: string, patch: Patch<Light>): EditResult {
  const look = lookIn(plan, lookId)
  if (!look || !lightIn(plan, lookId, lightId)) return gone()
  const clash = Object.entries(look.lights).some(([id, light]) => id !== lightId && light.letter === patch.letter)
  if (clash) return refuse(`Letter ${patch.letter} is on another light of this look.`)
  if (patch.headId !== undefined && !own(plan.heads, patch.headId)) return refuse('That head is not in the kit.')
  if (patch.modifierId !== undefined && !own(plan.modifiers, patch.modifierId)) {
    return refuse('That modifier is not in the kit.')
  }
  if (patch.gelIds?.some((id) => !own(plan.gels, id))) return refuse('That gel is not in the drawer.')
  return changeBranch(plan, 'changeLight', lightPath(lookId, lightId), patch)
}

/** Gives the light another head, and the power that head can be set to which is nearest to what it had. */
export function chooseHead(plan: Plan, lookId: string, lightId: string, headId: string): EditResult {
  const light = lightIn(plan, lookId, lightId)
  const head = own(plan.heads, headId)
  if (!light) return gone()
  if (!head) return refuse('That head is not in the kit.')
  const energyJoules = fitToHead(head, light.energyJoules)
  return renamed('chooseHead', changeLight(plan, lookId, lightId, { headId, energyJoules }))
}

/**
 * Sets the power in joules, at the nearest step of the light's head. What the head cannot give is kept as asked: the
 * checks say that it is out of power or too strong.
 */
export function setPower(plan: Plan, lookId: string, lightId: string, energyJoules: number): EditResult {
  const light = lightIn(plan, lookId, lightId)
  if (!light) return gone()
  if (!(energyJoules > 0)) return refuse('Power is more than nothing; switch the light off instead.')
  const head = headOf(plan, light)
  const stepped = head ? onHeadStep(head, energyJoules) : energyJoules
  return renamed('setPower', changeLight(plan, lookId, lightId, { energyJoules: stepped }))
}

/** Sets the sheets from tube to subject; an empty list is a clear light. */
export function setGels(plan: Plan, lookId: string, lightId: string, gelIds: readonly string[]): EditResult {
  if (gelIds.length > 4) return refuse('A light holds four sheets at most.')
  return renamed('setGels', changeLight(plan, lookId, lightId, { gelIds: [...gelIds] }))
}

/** Switches a light on or off; it keeps its place and its power. */
export function switchLight(plan: Plan, lookId: string, lightId: string, on: boolean): EditResult {
  return renamed('switchLight', changeLight(plan, lookId, lightId, { on }))
}

function placeLight(plan: Plan, name: string, lookId: string, light: Light): LightResult {
  const lightId = newId()
  const added = addBranch(plan, name, lightPath(lookId, lightId), light, LIMITS.lightsPerLook)
  return added.ok ? { ...added, lightId } : added
}

/** Letter and order of the next light to be set up. */
function turnInSetUp(look: Look): Pick<Light, 'letter' | 'setUpOrder'> {
  const lights = Object.values(look.lights)
  const last = Math.max(-1, ...lights.map((light) => light.setUpOrder))
  return { letter: nextLetter(lights.map((light) => light.letter)), setUpOrder: Math.min(Math.floor(last) + 1, 1_000) }
}

function renamed(name: string, result: EditResult): EditResult {
  return result.ok ? { ok: true, edit: { ...result.edit, name } } : result
}

