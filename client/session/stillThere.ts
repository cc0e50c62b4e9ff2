import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Selection } from './board.ts'

/** Whether what is picked is still in the look; areas are always there, or say themselves that they are not. */
export function stillThere(selection: Selection | null, plan: Plan, lookId: string): boolean {
  const look = plan.looks[lookId]
  switch (selection?.kind) {
    case 'light':
      return look?.lights[selection.id] !== undefined
    case 'piece':
      return look?.pieces[selection.id] !== undefined
    case 'point':
      return look?.points[selection.id] !== undefined
    default:
      return true
  }
}
