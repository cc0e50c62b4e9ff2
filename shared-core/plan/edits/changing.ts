import { z } from 'zod'
import type { Json, PlanChange, PlanEdit, PlanPath } from '../edit.ts'
import type { Plan } from '../schema/plan.ts'
import { nearestAllowed, wantedBy } from '../schema/nearestAllowed.ts'
import { schemaAt } from '../schema/schemaAt.ts'
import { refuse, type Refusal, type Result } from '../result.ts'

/** An edit ready to be written, or the reason why not. */
export type EditResult = Result<{ readonly edit: PlanEdit }>

/** Any leaves of a branch; arrays are given whole. */
export type Patch<Branch> = Branch extends readonly unknown[]
  ? Branch
  : Branch extends object
    ? { readonly [Key in keyof Branch]?: Patch<Branch[Key]> | undefined }
    : Branch

/** What stands at a path of the plan, or undefined. Own keys only: no path leads into a prototype. */
export function branchAt(plan: Plan, path: PlanPath): Json | undefined {
  let branch = plan as unknown as Json | undefined
  for (const key of path) {
    if (typeof branch !== 'object' || branch === null || Array.isArray(branch)) return undefined
    if (!Object.hasOwn(branch, key)) return undefined
    branch = (branch as { readonly [key: string]: Json })[key]
  }
  return branch
}

/**
 * One change for each leaf that the patch really alters, so that two people who change different leaves of one thing
 * both keep their change. Numbers are brought within the schema's bounds.
 */
export function changeBranch(plan: Plan, name: string, path: PlanPath, patch: object): EditResult {
  const changes: PlanChange[] = []
  const refusal = collectChanges(plan, path, patch, changes)
  return refusal ?? { ok: true, edit: { name, changes } }
}

/** Adds the patch's changes to `changes`; the refusal when a value cannot be taken. */
export function collectChanges(plan: Plan, path: PlanPath, patch: object, changes: PlanChange[]): Refusal | null {
  const before = branchAt(plan, path)
  const schema = schemaAt(path)
  if (before === undefined || schema === null) return refuse('That is no longer in the plan.')
  for (const [key, value] of Object.entries(patch)) {
    if (value === undefined) continue
    const refusal = collectChange(plan, [...path, key], value, changes)
    if (refusal) return refusal
  }
  return null
}

function collectChange(plan: Plan, path: PlanPath, value: unknown, changes: PlanChange[]): Refusal | null {
  const schema = schemaAt(path)
  const key = path[path.length - 1] ?? ''
  if (schema === null) return refuse(`The plan has no place for “${wordsOfKey(key).slice(0, 40)}”.`)
  if (schema instanceof z.ZodObject || schema instanceof z.ZodRecord) {
    if (typeof value !== 'object' || value === null) return refuse(`“${wordsOfKey(key)}” is a group of values.`)
    return collectChanges(plan, path, value, changes)
  }
  const set = nearestAllowed(schema, value)
  if (set === undefined) return refuse(`“${wordsOfKey(key)}” wants ${wantedBy(schema)}.`)
  if (!sameJson(branchAt(plan, path), set)) changes.push({ path, set })
  return null
}

/** "energyJoules" read aloud: "energy joules". */
export function wordsOfKey(key: string): string {
  return key.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()
}

/** Whether two JSON values say the same. */
export function sameJson(a: Json | undefined, b: Json | undefined): boolean {
  return a === b || (typeof a === 'object' && typeof b === 'object' && JSON.stringify(a) === JSON.stringify(b))
}
