import type { Plan } from './schema/plan.ts'

/** A value as JSON keeps it. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }

/** Where in the plan: keys from the root. */
export type PlanPath = readonly string[]

/** One leaf or branch set or removed. A branch set replaces all below it; arrays are leaves. */
export type PlanChange =
  | { readonly path: PlanPath; readonly set: Json }
  | { readonly path: PlanPath; readonly remove: true }

/**
 * What a gesture does to the plan, as data: the same edit is previewed on a snapshot, sent in presence while a hand is
 * still on the light, and written to the shared document in one transaction.
 */
export interface PlanEdit {
  /** The edit's function name, such as `moveLight`: what undo and history group by. */
  readonly name: string
  readonly changes: readonly PlanChange[]
}

/**
 * The plan after the edit, sharing every untouched branch with the plan before, so that `===` tells what changed.
 * A change whose branch is gone (somebody removed the light) changes nothing, as in the shared document.
 */
export function applyEdit(plan: Plan, edit: PlanEdit): Plan {
  return edit.changes.reduce<Json>((tree, change) => applyChange(tree, change, 0), plan as unknown as Json) as unknown as Plan
}

function applyChange(branch: Json, change: PlanChange, depth: number): Json {
  const key = change.path[depth]
  if (key === undefined || !isBranch(branch)) return branch
  const before = Object.hasOwn(branch, key) ? branch[key] : undefined
  if (depth < change.path.length - 1) {
    const after = before === undefined ? undefined : applyChange(before, change, depth + 1)
    return after === undefined || after === before ? branch : { ...branch, [key]: after }
  }
  if ('set' in change) return change.set === before ? branch : { ...branch, [key]: change.set }
  if (before === undefined) return branch
  const { [key]: _removed, ...rest } = branch
  return rest
}

function isBranch(value: Json | undefined): value is { readonly [key: string]: Json } {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
