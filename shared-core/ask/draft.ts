import { applyEdit, type PlanChange, type PlanEdit } from '../plan/edit.ts'
import type { Light, Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'

/** A plan being tried: what it has become, and by which changes. */
export interface Draft {
  readonly lookId: string
  readonly plan: Plan
  readonly changes: readonly PlanChange[]
  /** Lights set beside another to help it, by the id of the light they help: their levels count together. */
  readonly helpers: ReadonlyMap<string, readonly string[]>
}

/** The plan as it stands. */
export function draftOf(plan: Plan, lookId: string): Draft {
  return { lookId, plan, changes: [], helpers: new Map() }
}

/** The draft after more changes. */
export function changed(draft: Draft, changes: readonly PlanChange[]): Draft {
  if (changes.length === 0) return draft
  return { ...draft, plan: applyEdit(draft.plan, { name: 'ask', changes }), changes: [...draft.changes, ...changes] }
}

/** The draft with a light that helps another. */
export function helped(draft: Draft, lightId: string, helperId: string): Draft {
  return { ...draft, helpers: new Map([...draft.helpers, [lightId, [...(draft.helpers.get(lightId) ?? []), helperId]]]) }
}

/** All changes as one edit; of several changes at one place only the last is kept. */
export function editOf({ changes }: Draft): PlanEdit {
  const last = new Map(changes.map((change, at) => [change.path.join('/'), at]))
  return { name: 'ask', changes: changes.filter((change, at) => last.get(change.path.join('/')) === at) }
}

export function lookOf({ plan, lookId }: Draft): Look {
  return plan.looks[lookId]!
}

export function lightOf(draft: Draft, lightId: string): Light {
  return lookOf(draft).lights[lightId]!
}
