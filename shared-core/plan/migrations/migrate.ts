import { SCHEMA_VERSION } from '../schema/plan.ts'
import { refuse, type Result } from '../result.ts'
import { fromVersion1 } from './fromVersion1.ts'
import { fromVersion2 } from './fromVersion2.ts'

/** Leads a plan of one version to the next. Gets and gives JSON: the old shape has no type any more. */
export interface Migration {
  /** The version it starts from; it ends at `from + 1`. */
  readonly from: number
  readonly why: string
  readonly migrate: (plan: Readonly<Record<string, unknown>>) => Record<string, unknown>
}

/**
 * Every step from the first version on, in order. A step, once shipped, is never changed: files of its version exist.
 */
export const migrations: readonly Migration[] = [fromVersion1, fromVersion2]

/**
 * Leads a plan of any older version up to this program's. Refuses what carries no version and what a newer program
 * wrote, since guessing would lose what that program knew. `steps` and `target` are given by tests.
 */
export function migrate(
  plan: Readonly<Record<string, unknown>>,
  steps: readonly Migration[] = migrations,
  target: number = SCHEMA_VERSION,
): Result<{ readonly plan: Readonly<Record<string, unknown>>; readonly cameFrom: number }> {
  const cameFrom = plan['schemaVersion']
  if (typeof cameFrom !== 'number' || !Number.isInteger(cameFrom) || cameFrom < 1) {
    return refuse('It does not say which version of the plan it holds.')
  }
  if (cameFrom > target) {
    return refuse(
      `It was made by a newer version of this program (plan version ${cameFrom}; this one reads up to ${target}).`,
    )
  }
  let current = plan
  for (let version = cameFrom; version < target; version += 1) {
    const step = steps.find((one) => one.from === version)
    if (!step) return refuse(`There is no way from plan version ${version} to ${version + 1}.`)
    current = { ...step.migrate(current), schemaVersion: version + 1 }
  }
  return { ok: true, plan: current, cameFrom }
}
