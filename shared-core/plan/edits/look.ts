import type { Backdrop, Camera, Finish, Look, MeterSettings, Subject } from '../schema/look.ts'
import type { Plan } from '../schema/plan.ts'
import { changeBranch, type EditResult, type Patch } from './changing.ts'

/** Changes any leaves of the camera, each within its bounds. */
export function changeCamera(plan: Plan, lookId: string, patch: Patch<Camera>): EditResult {
  return changeBranch(plan, 'changeCamera', ['looks', lookId, 'camera'], patch)
}

/** Changes any leaves of the subject, each within its bounds. */
export function changeSubject(plan: Plan, lookId: string, patch: Patch<Subject>): EditResult {
  return changeBranch(plan, 'changeSubject', ['looks', lookId, 'subject'], patch)
}

/** Changes any leaves of the backdrop, each within its bounds. */
export function changeBackdrop(plan: Plan, lookId: string, patch: Patch<Backdrop>): EditResult {
  return changeBranch(plan, 'changeBackdrop', ['looks', lookId, 'backdrop'], patch)
}

/** Changes how the picture is finished after capture, each value within its bounds. */
export function changeFinish(plan: Plan, lookId: string, patch: Patch<Finish>): EditResult {
  return changeBranch(plan, 'changeFinish', ['looks', lookId, 'finish'], patch)
}

/** Changes how the look is metered: receptor and constants. */
export function changeMeter(plan: Plan, lookId: string, patch: Patch<MeterSettings>): EditResult {
  return changeBranch(plan, 'changeMeter', ['looks', lookId, 'meter'], patch)
}

/** The look's own words: name, note, and its place among the looks. */
export function changeLook(
  plan: Plan, lookId: string, patch: Partial<Pick<Look, 'name' | 'note' | 'order'>>,
): EditResult {
  return changeBranch(plan, 'changeLook', ['looks', lookId], patch)
}
