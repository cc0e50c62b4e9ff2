import type { Backdrop, Camera, Finish, Look, MeterSettings, Subject } from '../schema/look.ts'
import type { Plan } from '../schema/plan.ts'
import { changeBranch, type EditResult, type Patch } from './changing.ts'

export function changeCamera(plan: Plan, lookId: string, patch: Patch<Camera>): EditResult {
  return changeBranch(plan, 'changeCamera', ['looks', lookId, 'camera'], patch)
}

export function changeSubject(plan: Plan, lookId: string, patch: Patch<Subject>): EditResult {
  return changeBranch(plan, 'changeSubject', ['looks', lookId, 'subject'], patch)
}

export function changeBackdrop(plan: Plan, lookId: string, patch: Patch<Backdrop>): EditResult {
  return changeBranch(plan, 'changeBackdrop', ['looks', lookId, 'backdrop'], patch)
}

export function changeFinish(plan: Plan, lookId: string, patch: Patch<Finish>): EditResult {
  return changeBranch(plan, 'changeFinish', ['looks', lookId, 'finish'], patch)
}

export function changeMeter(plan: Plan, lookId: string, patch: Patch<MeterSettings>): EditResult {
  return changeBranch(plan, 'changeMeter', ['looks', lookId, 'meter'], patch)
}

/** The look's own words: name, note, and its place among the looks. */
export function changeLook(
  plan: Plan, lookId: string, patch: Partial<Pick<Look, 'name' | 'note' | 'order'>>,
): EditResult {
  return changeBranch(plan, 'changeLook', ['looks', lookId], patch)
}
