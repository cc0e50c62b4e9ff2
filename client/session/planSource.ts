import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'

/** The plan as last read, with what the reader had to repair or leave out. */
export interface PlanReading {
  readonly plan: Plan
  readonly repairs: readonly string[]
}

/**
 * Who changed the plan: this page, or others by their client ids in the shared document (none where only something was
 * taken out, which leaves no id); null where another copy of the plan came in its place.
 */
export type ChangedBy = 'self' | readonly number[] | null

/**
 * Where the board's plan lives. The board knows nothing else of it: a shared document on the job, the same document
 * without a network, or a plain plan in a test.
 */
export interface PlanSource {
  read(): PlanReading
  /** One transaction, one undo step. */
  write(edit: PlanEdit): void
  undo(): void
  redo(): void
  canUndo(): boolean
  canRedo(): boolean
  /** Calls after every change of plan or of what can be undone; returns how to stop. */
  onChange(listener: (by?: ChangedBy) => void): () => void
}
