import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'

/** The plan as last read, with what the reader had to repair or leave out. */
export interface PlanReading {
  readonly plan: Plan
  readonly repairs: readonly string[]
}

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
  onChange(listener: () => void): () => void
}
