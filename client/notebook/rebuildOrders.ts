import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { RebuildIn, Rebuilt } from '../../shared-core/notebook/rebuild.ts'

export interface ToRebuildWorker {
  readonly plan: Plan
  readonly lookId: string
  readonly where: RebuildIn
}

export type FromRebuildWorker =
  | { readonly is: 'rebuilt'; readonly rebuilt: Rebuilt }
  | { readonly is: 'trouble'; readonly words: string }
