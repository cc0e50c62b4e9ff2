import type { Plan } from '../../shared-core/plan/schema/plan.ts'

/** An edit that has reached the plan on this board. */
export interface PlanSeenChange {
  readonly before: Plan
  readonly after: Plan
  /** Made, undone or redone on this page. */
  readonly isOwn: boolean
  /** Who else made it, as far as they are here to be known. */
  readonly names: readonly string[]
}
