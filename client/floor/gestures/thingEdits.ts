import type { PlanEdit } from '../../../shared-core/plan/edit.ts'
import { changeLight, duplicateLight, removeLight, switchLight } from '../../../shared-core/plan/edits/lights.ts'
import { changePiece, duplicatePiece, removePiece } from '../../../shared-core/plan/edits/pieces.ts'
import { aimLight } from '../../../shared-core/plan/edits/placing.ts'
import { changePoint, removePoint } from '../../../shared-core/plan/edits/points.ts'
import type { EditResult } from '../../../shared-core/plan/edits/changing.ts'
import { refuse, type Result } from '../../../shared-core/plan/result.ts'
import type { Look } from '../../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { subjectForm } from '../../../shared-core/set/subjectForm.ts'
import type { ThingKey } from '../things.ts'

type CopyResult = Result<{ readonly edit: PlanEdit; readonly key: ThingKey }>

/** The same thing once more, beside it. */
export function duplicateThing(plan: Plan, lookId: string, key: ThingKey): CopyResult {
  if (key.kind === 'light') {
    const copy = duplicateLight(plan, lookId, key.id)
    return copy.ok ? { ok: true, edit: copy.edit, key: { kind: 'light', id: copy.lightId } } : copy
  }
  if (key.kind === 'piece') {
    const copy = duplicatePiece(plan, lookId, key.id)
    return copy.ok ? { ok: true, edit: copy.edit, key: { kind: 'piece', id: copy.pieceId } } : copy
  }
  return refuse('Only lights, flags, V-flats, boards and scrims are duplicated.')
}

/** Takes a thing out of the look. */
export function removeThing(plan: Plan, lookId: string, key: ThingKey): EditResult {
  switch (key.kind) {
    case 'light':
      return removeLight(plan, lookId, key.id)
    case 'piece':
      return removePiece(plan, lookId, key.id)
    case 'point':
      return removePoint(plan, lookId, key.id)
    default:
      return refuse('Camera, subject and paper belong to every look; only what was placed can be removed.')
  }
}

/** The mirror of a thing across the subject: as far away, on the other side. */
export function toOtherSide(plan: Plan, lookId: string, key: ThingKey): EditResult {
  const look = plan.looks[lookId]
  const across = (x: number) => 2 * (look?.subject.xMetres ?? 0) - x
  if (key.kind === 'light') {
    const light = look?.lights[key.id]
    if (light === undefined) return refuse('That light is no longer in the look.')
    return changeLight(plan, lookId, key.id, {
      place: { xMetres: across(light.place.xMetres) },
      aim: { xMetres: across(light.aim.xMetres) },
      rollDegrees: 0 - light.rollDegrees,
    })
  }
  const standing = key.kind === 'piece' ? look?.pieces[key.id] : key.kind === 'point' ? look?.points[key.id] : undefined
  if (standing === undefined || !('id' in key)) return refuse('Only what was placed has another side.')
  const patch = { place: { xMetres: across(standing.place.xMetres) }, facingDegrees: 0 - standing.facingDegrees }
  return key.kind === 'piece' ? changePiece(plan, lookId, key.id, patch) : changePoint(plan, lookId, key.id, patch)
}

/** Points a light at the subject's nose. */
export function aimAtNose(plan: Plan, lookId: string, key: ThingKey): EditResult {
  const look = plan.looks[lookId]
  if (key.kind !== 'light' || look === undefined) return refuse('Only a light is aimed.')
  const [xMetres, yMetres, zMetres] = noseOf(look)
  const toCentimetres = (metres: number) => Math.round(metres * 100) / 100
  return aimLight(plan, lookId, key.id, { xMetres: toCentimetres(xMetres), yMetres: toCentimetres(yMetres), zMetres: toCentimetres(zMetres) })
}

export function noseOf(look: Look): readonly [number, number, number] {
  const nose = subjectForm(look.subject).areas.find((area) => area.id === 'nose')
  return nose?.place ?? [look.subject.xMetres, look.subject.yMetres, look.subject.heightMetres]
}

/** Switches a light off, or on again. */
export function switchThing(plan: Plan, lookId: string, key: ThingKey): EditResult {
  const light = key.kind === 'light' ? plan.looks[lookId]?.lights[key.id] : undefined
  if (key.kind !== 'light' || light === undefined) return refuse('Only a light is switched.')
  return switchLight(plan, lookId, key.id, !light.on)
}
