import type { LookEffects } from '../../../shared-core/compare/effects.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'

/** Two looks to be compared: then and now, or side by side. */
export interface ComparedLooks {
  readonly before: Plan
  readonly lookBefore: string
  readonly after: Plan
  readonly lookAfter: string
}

export type ToCompareWorker =
  | ({ readonly do: 'compare'; readonly slot: string; readonly number: number } & ComparedLooks)
  /** Nobody waits for this slot any more. */
  | { readonly do: 'forget'; readonly slot: string }

export type FromCompareWorker = { readonly number: number } & (
  | { readonly is: 'progress'; readonly share: number }
  | { readonly is: 'found'; readonly effects: LookEffects }
  | { readonly is: 'trouble'; readonly words: string }
)
