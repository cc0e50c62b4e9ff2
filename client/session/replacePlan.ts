import type { Json, PlanChange, PlanEdit, PlanPath } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'

/**
 * One edit that puts another job in the place of this one, so that one undo brings the old one back. It touches only the
 * leaves that differ: what somebody changes elsewhere at the same moment stays theirs.
 */
export function replacePlan(before: Plan, after: Plan): PlanEdit {
  return { name: 'replacePlan', changes: changesBetween(before as unknown as Json, after as unknown as Json, []) }
}

function changesBetween(before: Json | undefined, after: Json, path: PlanPath): readonly PlanChange[] {
  if (before === after) return []
  if (!isGroup(before) || !isGroup(after)) {
    return JSON.stringify(before) === JSON.stringify(after) ? [] : [{ path, set: after }]
  }
  const gone = Object.keys(before).filter((key) => !Object.hasOwn(after, key))
  return [
    ...gone.map((key): PlanChange => ({ path: [...path, key], remove: true })),
    ...Object.entries(after).flatMap(([key, value]) => changesBetween(before[key], value, [...path, key])),
  ]
}

function isGroup(value: Json | undefined): value is { readonly [key: string]: Json } {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
