import { changeLight } from '../plan/edits/lights.ts'
import type { EditResult } from '../plan/edits/changing.ts'
import { refuse } from '../plan/result.ts'
import type { Plan } from '../plan/schema/plan.ts'

/** Several heads of a look into the circuits named: one edit, one step back. */
export function plugHeads(plan: Plan, lookId: string, plugs: readonly { readonly lightId: string; readonly circuitId: string }[]): EditResult {
  const changes = []
  for (const { lightId, circuitId } of plugs) {
    if (!Object.hasOwn(plan.room.circuits, circuitId)) return refuse('That circuit is no longer in the room.')
    const one = changeLight(plan, lookId, lightId, { circuitId })
    if (!one.ok) return one
    changes.push(...one.edit.changes)
  }
  return { ok: true, edit: { name: 'plugHeads', changes } }
}
