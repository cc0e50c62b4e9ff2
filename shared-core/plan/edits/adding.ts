import type { Json, PlanEdit, PlanPath } from '../edit.ts'
import { schemaAt } from '../schema/schemaAt.ts'
import { refuse } from '../result.ts'
import { branchAt, wordsOfKey, type EditResult } from './changing.ts'
import type { Plan } from '../schema/plan.ts'

/** Sets a whole new thing at a path, if the schema takes it and the record has room. */
export function addBranch(plan: Plan, name: string, path: PlanPath, value: object, mostInRecord: number): EditResult {
  const record = branchAt(plan, path.slice(0, -1))
  if (typeof record !== 'object' || record === null) return refuse('The place it should go to is no longer in the plan.')
  if (Object.keys(record).length >= mostInRecord) return refuse(`There is room for ${mostInRecord} of these, and no more.`)
  const parsed = schemaAt(path)?.safeParse(value)
  if (!parsed?.success) {
    const where = parsed?.error.issues[0]?.path.join(' ') ?? ''
    return refuse(`That cannot be added: “${wordsOfKey(where)}” is missing or out of range.`)
  }
  return { ok: true, edit: { name, changes: [{ path, set: parsed.data as Json }] } }
}

/** Takes a thing out of its record. Refused when it is no longer there. */
export function removeBranch(plan: Plan, name: string, path: PlanPath): EditResult {
  if (branchAt(plan, path) === undefined) return refuse('That is no longer in the plan.')
  return { ok: true, edit: { name, changes: [{ path, remove: true }] } }
}

/** Two edits as one gesture. */
export function together(name: string, ...edits: readonly PlanEdit[]): PlanEdit {
  return { name, changes: edits.flatMap((edit) => edit.changes) }
}
