import { applyEdit, type PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { PlanSource } from '../../client/session/planSource.ts'

/** A plan of one's own, kept nowhere: every edit can be undone for as long as the page is open. */
export function createLocalPlan(first: Plan): PlanSource {
  let past: readonly Plan[] = []
  let present = first
  let future: readonly Plan[] = []
  const listeners = new Set<() => void>()
  const changed = () => listeners.forEach((listener) => listener())

  return {
    read: () => ({ plan: present, repairs: [] }),
    write(edit: PlanEdit) {
      const next = applyEdit(present, edit)
      if (next === present) return
      past = [...past, present]
      present = next
      future = []
      changed()
    },
    undo() {
      const before = past.at(-1)
      if (before === undefined) return
      past = past.slice(0, -1)
      future = [present, ...future]
      present = before
      changed()
    },
    redo() {
      const [after, ...rest] = future
      if (after === undefined) return
      past = [...past, present]
      present = after
      future = rest
      changed()
    },
    canUndo: () => past.length > 0,
    canRedo: () => future.length > 0,
    onChange(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}
