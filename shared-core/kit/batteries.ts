import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { chargeUse, type ChargeUse } from '../predict/supply.ts'

export interface BatteryState extends ChargeUse {
  readonly lightId: string
  readonly letter: string
  readonly headName: string
}

/** What the frames planned take of each battery head's charge, by letter. Heads without a stated charge are left out. */
export function batteryStates(plan: Plan, look: Look): readonly BatteryState[] {
  return Object.entries(look.lights).flatMap(([lightId, light]) => {
    const head = plan.heads[light.headId]
    const use = light.on && head ? chargeUse(head, light.energyJoules, look.framesPlanned ?? 0) : null
    return use && head ? [{ ...use, lightId, letter: light.letter, headName: head.name }] : []
  }).sort((a, b) => a.letter.localeCompare(b.letter, 'en'))
}
