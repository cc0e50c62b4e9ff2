import type { Units } from '../../plan/entry/length.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import type { Mark } from '../marks.ts'

/** What the words of a move are made with. */
export interface MoveContext {
  readonly plan: Plan
  readonly units: Units
  /** Of the look that is built. */
  readonly marks: readonly Mark[]
}
