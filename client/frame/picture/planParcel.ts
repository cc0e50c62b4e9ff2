import type { Plan } from '../../../shared-core/plan/schema/plan.ts'

/**
 * A plan on its way to the worker: what of it is not the same as in the plan sent before. A hand moves one number of a
 * few hundred, sixty times a second; null stands for the same plan again.
 */
export type PlanParcel = Part | null

/** A value that is new, or a branch of which some keys stay what they were. */
type Part = { readonly value: unknown } | { readonly keys: readonly string[]; readonly fresh: Readonly<Record<string, Part>> }

type Branch = Readonly<Record<string, unknown>>

/** @param before the plan of the parcel before; null for the first */
export function packPlan(before: Plan | null, plan: Plan): PlanParcel {
  return plan === before ? null : packed(before, plan)
}

/**
 * The plan that was packed, with every branch that stayed as the very object it was.
 * @param before what came of the parcel before. Throws where there was none and the parcel is none of a whole plan.
 */
export function unpackPlan(before: Plan | null, parcel: PlanParcel): Plan {
  if (parcel !== null) return unpacked(before, parcel) as Plan
  if (before === null) throw new Error('A plan was said to be the same as one that never came.')
  return before
}

function packed(before: unknown, now: unknown): Part {
  if (!isBranch(before) || !isBranch(now)) return { value: now }
  const keys = Object.keys(now)
  const fresh = keys.filter((key) => !Object.hasOwn(before, key) || before[key] !== now[key])
  return { keys, fresh: Object.fromEntries(fresh.map((key) => [key, packed(Object.hasOwn(before, key) ? before[key] : undefined, now[key])])) }
}

function unpacked(before: unknown, part: Part): unknown {
  if ('value' in part) return part.value
  const { keys, fresh } = part
  const old = before as Branch
  return Object.fromEntries(keys.map((key) => [key, Object.hasOwn(fresh, key) ? unpacked(old[key], fresh[key]!) : old[key]]))
}

function isBranch(value: unknown): value is Branch {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
