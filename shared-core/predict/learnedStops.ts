import type { Light } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'

type LitBy = Pick<Light, 'headId' | 'modifierId' | 'gelIds'>

/**
 * What the meter taught of all that makes a light, in stops: head, modifier and each sheet, a sheet used twice counting
 * twice. Kit that is not there taught nothing.
 */
export function learnedStopsOf(plan: Plan, { headId, modifierId, gelIds }: LitBy): number {
  const ofHeadAndModifier = (plan.heads[headId]?.learnedStops ?? 0) + (plan.modifiers[modifierId]?.learnedStops ?? 0)
  return gelIds.reduce((sum, id) => sum + (plan.gels[id]?.learnedStops ?? 0), ofHeadAndModifier)
}
