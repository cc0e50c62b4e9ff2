import { readPlan, type PlanReading } from './readPlan.ts'
import type { Plan } from './schema/plan.ts'
import { inPlanOrder } from './schema/order.ts'

export { readPlan, type PlanReading } from './readPlan.ts'
export type { Problem } from './reading/problem.ts'

/** Characters. The largest job within the limits is well below; what is larger is something else. */
export const JOB_FILE_MOST_CHARACTERS = 24_000_000

/** The name ending of a job file. */
export const JOB_FILE_ENDING = '.halfstop.json'

/** A plan from the text of a job file, or every problem with its path. */
export function readJobFile(text: string): PlanReading {
  if (text.length > JOB_FILE_MOST_CHARACTERS) {
    return problem(`The file is too large: ${JOB_FILE_MOST_CHARACTERS / 1e6} million characters is the most a job can be.`)
  }
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return problem('The file is not JSON: it is damaged, or not a job file at all.')
  }
  return readPlan(value)
}

/** The text of a job file. The same plan always gives the same text, so that files can be compared. */
export function writeJobFile(plan: Plan): string {
  return `${JSON.stringify(inPlanOrder(plan), null, 2)}\n`
}

function problem(message: string): PlanReading {
  return { ok: false, problems: [{ path: '', message }] }
}
