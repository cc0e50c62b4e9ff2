import type { Head } from '../schema/kit.ts'
import type { Light, Look, Piece, Point } from '../schema/look.ts'
import type { Plan } from '../schema/plan.ts'

/** Look-ups by id that never reach into a prototype and answer undefined for what is gone. */

export const lookIn = (plan: Plan, lookId: string): Look | undefined => own(plan.looks, lookId)
export const lightIn = (plan: Plan, lookId: string, lightId: string): Light | undefined =>
  own(lookIn(plan, lookId)?.lights, lightId)
export const pieceIn = (plan: Plan, lookId: string, pieceId: string): Piece | undefined =>
  own(lookIn(plan, lookId)?.pieces, pieceId)
export const pointIn = (plan: Plan, lookId: string, pointId: string): Point | undefined =>
  own(lookIn(plan, lookId)?.points, pointId)
export const headOf = (plan: Plan, light: Light): Head | undefined => own(plan.heads, light.headId)

export function own<Value>(record: Readonly<Record<string, Value>> | undefined, id: string): Value | undefined {
  return record !== undefined && Object.hasOwn(record, id) ? record[id] : undefined
}
