import { applyEdit, type PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { MARGIN_STOPS } from '../../shared-core/ask/want.ts'
import type { AnswerFound } from './askOrders.ts'

/** What came of a question, in words: that it can be done, or what binds and what can be had instead. */
export interface Verdict {
  readonly words: string
  /** What stopped the other ways that were tried. */
  readonly further: readonly string[]
}

/** @param plan the plan that was asked about */
export function verdictOf({ ways, limit, furtherLimits, isComplete }: AnswerFound, plan: Plan, lookId: string): Verdict {
  const further = [...new Set(furtherLimits.map(({ words }) => words))]
  const cutShort = isComplete ? '' : ' Stopped before all was tried.'
  const say = (words: string): Verdict => ({ words: `${words}${cutShort}`, further })
  const powers = ways.find(({ by }) => by === 'powers')
  if (limit === null) {
    if (powers?.edit.changes.length === 0) return say('It is so already.')
    const tight = powers ? tightLights(plan, lookId, powers.edit) : []
    return say(tight.length === 0 ? 'It can be done.' : `It can be done, only just: ${tight.join(', ')}.`)
  }
  const meeting = ways.filter(({ meetsAll }) => meetsAll).length
  if (meeting > 0) return say(`${limit.words}. Powers alone do not do it; ${meeting === 1 ? 'this does' : 'these do'}.`)
  return say(`${limit.words}. It cannot all be had; ${ways.length === 1 ? 'this comes' : 'these come'} nearest.`)
}

/** "B has 0.0 stop in hand": lights a way leaves at an end of their head's range. */
function tightLights(plan: Plan, lookId: string, edit: PlanEdit): string[] {
  const before = plan.looks[lookId]
  const after = applyEdit(plan, edit).looks[lookId]
  return Object.entries(after?.lights ?? {}).flatMap(([id, light]): string[] => {
    const head = plan.heads[light.headId]
    if (!light.on || !head || light.energyJoules === before?.lights[id]?.energyJoules) return []
    const inHand = Math.log2(head.fullEnergyJoules / light.energyJoules)
    const aboveLowest = Math.log2(light.energyJoules / head.lowestEnergyJoules)
    const left = Math.min(inHand, aboveLowest)
    if (left >= MARGIN_STOPS - 0.01) return []
    return [`${light.letter} has ${Math.max(0, left).toFixed(1)} stop ${inHand <= aboveLowest ? 'in hand' : 'above its lowest'}`]
  })
}
