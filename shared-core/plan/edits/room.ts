import type { PlanEdit } from '../edit.ts'
import type { Room } from '../schema/room.ts'
import { LIMITS, type Plan } from '../schema/plan.ts'
import { newId } from '../newId.ts'
import type { Result } from '../result.ts'
import { addBranch, removeBranch } from './adding.ts'
import { changeBranch, type EditResult, type Patch } from './changing.ts'

type Column = Room['columns'][string]
type Circuit = Room['circuits'][string]

/** A column that stands in the way. */
export function addColumn(plan: Plan, column: Column): Result<{ readonly edit: PlanEdit; readonly columnId: string }> {
  const columnId = newId()
  const added = addBranch(plan, 'addColumn', ['room', 'columns', columnId], column, LIMITS.kitEntries)
  return added.ok ? { ...added, columnId } : added
}

export function changeColumn(plan: Plan, columnId: string, patch: Patch<Column>): EditResult {
  return changeBranch(plan, 'changeColumn', ['room', 'columns', columnId], patch)
}

export function removeColumn(plan: Plan, columnId: string): EditResult {
  return removeBranch(plan, 'removeColumn', ['room', 'columns', columnId])
}

/** A circuit with a breaker of its own. */
export function addCircuit(plan: Plan, circuit: Circuit): Result<{ readonly edit: PlanEdit; readonly circuitId: string }> {
  const circuitId = newId()
  const added = addBranch(plan, 'addCircuit', ['room', 'circuits', circuitId], circuit, LIMITS.kitEntries)
  return added.ok ? { ...added, circuitId } : added
}

export function changeCircuit(plan: Plan, circuitId: string, patch: Patch<Circuit>): EditResult {
  return changeBranch(plan, 'changeCircuit', ['room', 'circuits', circuitId], patch)
}

export function removeCircuit(plan: Plan, circuitId: string): EditResult {
  return removeBranch(plan, 'removeCircuit', ['room', 'circuits', circuitId])
}
