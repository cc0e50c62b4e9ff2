import { z } from 'zod'
import { migrate } from './migrations/migrate.ts'
import { crossChecks } from './reading/crossChecks.ts'
import { hostileProblem } from './reading/hostile.ts'
import { relettered, reletterings } from './reading/letters.ts'
import { MOST_PROBLEMS, pathText, problemFromIssue, type Problem } from './reading/problem.ts'
import { mostEntriesOf } from './schema/limits.ts'
import { planSchema, type Plan } from './schema/plan.ts'
import { inPlanOrder } from './schema/order.ts'

export type PlanReading =
  | { readonly ok: true; readonly plan: Plan; readonly repairs: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * A plan from anything: a file, a fixture, somebody's hand-written JSON. Older versions are led up to this one. What
 * does not hold together is refused with every problem and its path; only clashing letters are repaired, and said.
 */
export function readPlan(value: unknown): PlanReading {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refused({ path: '', message: 'A job is a group of values, and this is something else.' })
  }
  const hostile = hostileProblem(value)
  if (hostile) return refused(hostile)
  const current = migrate(value as Record<string, unknown>)
  if (!current.ok) return refused({ path: 'schemaVersion', message: current.message })
  const overfull = limitProblems(planSchema, current.plan, [])
  if (overfull.length > 0) return refused(...overfull)
  const parsed = planSchema.safeParse(current.plan)
  if (!parsed.success) return refused(...parsed.error.issues.map(problemFromIssue))
  const problems = crossChecks(parsed.data)
  return problems.length > 0 ? refused(...problems) : reletter(inPlanOrder(parsed.data))
}

function refused(...problems: readonly Problem[]): PlanReading {
  return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) }
}

/** Counts come before the schema, so that a file of a million lights is refused and not parsed. */
function limitProblems(schema: z.ZodType, value: unknown, path: readonly string[]): Problem[] {
  if (typeof value !== 'object' || value === null) return []
  const entries = Object.entries(value)
  if (schema instanceof z.ZodRecord) {
    const most = mostEntriesOf(schema)
    if (entries.length > most) return [{ path: pathText(path), message: `holds ${entries.length}; ${most} is the most` }]
    return entries.flatMap(([key, below]) => limitProblems(schema.valueType as z.ZodType, below, [...path, key]))
  }
  if (schema instanceof z.ZodObject) {
    const shape = schema.shape as Record<string, z.ZodType>
    return Object.entries(shape).flatMap(([key, below]) =>
      Object.hasOwn(value, key) ? limitProblems(below, (value as Record<string, unknown>)[key], [...path, key]) : [],
    )
  }
  return []
}

function reletter(plan: Plan): PlanReading {
  const repairs: string[] = []
  const looks = Object.fromEntries(
    Object.entries(plan.looks).map(([lookId, look]) => {
      const changes = reletterings(look.lights)
      repairs.push(...changes.map(({ from, to }) => `Two lights of “${look.name}” were lettered ${from}: one is now ${to}.`))
      return [lookId, { ...look, lights: relettered(look.lights, changes) }]
    }),
  )
  return { ok: true, plan: { ...plan, looks }, repairs }
}
