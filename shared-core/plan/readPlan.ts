import { migrate } from './migrations/migrate.ts'
import { crossChecks } from './reading/crossChecks.ts'
import { hostileProblem } from './reading/hostile.ts'
import { relettered, reletterings, reletteringWords } from './reading/letters.ts'
import { MOST_PROBLEMS, pathText, problemFromIssue, type Problem } from './reading/problem.ts'
import { overfullRecords } from './schema/limits.ts'
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
  const overfull = overfullRecords(current.plan)
  if (overfull.length > 0) {
    return refused(
      ...overfull.map(({ path, entries, most }) => ({
        path: pathText(path),
        message: `holds ${entries}; ${most} is the most`,
      })),
    )
  }
  const parsed = planSchema.safeParse(current.plan)
  if (!parsed.success) return refused(...parsed.error.issues.map(problemFromIssue))
  const problems = crossChecks(parsed.data)
  return problems.length > 0 ? refused(...problems) : reletter(inPlanOrder(parsed.data))
}

function refused(...problems: readonly Problem[]): PlanReading {
  return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) }
}

function reletter(plan: Plan): PlanReading {
  const repairs: string[] = []
  const looks = Object.fromEntries(
    Object.entries(plan.looks).map(([lookId, look]) => {
      const changes = reletterings(look.lights)
      repairs.push(...reletteringWords(look.name, changes))
      return [lookId, { ...look, lights: relettered(look.lights, changes) }]
    }),
  )
  return { ok: true, plan: { ...plan, looks }, repairs }
}
