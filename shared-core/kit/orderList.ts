import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { chargeUse, headLoads } from '../predict/supply.ts'
import type { GelLayout } from './cutLayout.ts'
import { gelCuts } from './gelCuts.ts'
import { orderLights } from './orderLights.ts'
import { orderCases, orderLine, type OrderLine } from './orderLine.ts'
import { orderSet } from './orderSet.ts'

/**
 * All that these looks need, case by case: how many each uses, how many at once at most, spares by rule, and what is
 * missing where the kit counts what there is. `layouts` are the gels' cuts on their sheets.
 */
export function orderList(plan: Plan, lookIds: readonly string[], layouts: readonly GelLayout[]): readonly OrderLine[] {
  const looks = lookIds.flatMap((id) => plan.looks[id] ?? [])
  const lines = [...orderLights(plan, looks), ...orderSet(looks), ...gels(plan, lookIds, layouts), ...power(plan, looks)]
  return orderCases.flatMap((name) => lines.filter((line) => line.case === name && line.needed > 0))
}

function gels(plan: Plan, lookIds: readonly string[], layouts: readonly GelLayout[]): readonly OrderLine[] {
  const allCuts = gelCuts(plan, lookIds)
  const sheets = layouts.filter(({ gelId }) => Object.hasOwn(plan.gels, gelId)).map(({ gelId, sheets: laid, sheetsToBuy, rollsToBuy, cannot }) => {
    const own = allCuts.filter((cut) => cut.gelId === gelId)
    const buys = sheetsToBuy + rollsToBuy
    const notes = [
      `${own.length} ${own.length === 1 ? 'cut' : 'cuts'}${own.some(({ isSpare }) => isSpare) ? ', one of them a spare of a dense gel' : ''}`,
      ...(rollsToBuy > 0 ? ['a roll'] : []),
      ...(cannot.length > 0 ? [`${cannot.length} fit no sheet`] : []),
    ]
    return orderLine({
      key: `gel.${gelId}`, case: 'Gels', name: `${plan.gels[gelId]!.name}, sheets to cut`,
      byLook: lookIds.map((lookId) => laid.filter(({ cuts }) => cuts.some(({ cut }) => cut.uses.some((use) => use.lookId === lookId))).length),
      needed: Math.max(laid.length, cannot.length > 0 ? 1 : 0), owned: laid.length - buys, note: notes.join('; '),
    })
  })
  if (sheets.length === 0) return []
  const clips = orderLine({
    key: 'gel.clips', case: 'Gels', name: 'Clips, clear tape, marker, gloves', byLook: lookIds.map(() => 1), note: 'heat-proof clips: a gel never touches tube or glass',
  })
  return [...sheets, clips]
}

/** Cables, blocks, batteries, triggers. One spare of what a day stops without (common practice, no source). */
function power(plan: Plan, looks: readonly Look[]): readonly OrderLine[] {
  const loads = looks.map((look) => headLoads(plan, look))
  const blocks = loads.map((inLook) => new Set(inLook.map(({ circuitId }) => circuitId)).size)
  return [
    orderLine({
      key: 'power.cable', case: 'Power and triggers', name: 'Mains cable with extension, uncoiled in use', spare: 1,
      byLook: loads.map((inLook) => inLook.length), note: 'one a head',
    }),
    orderLine({ key: 'power.block', case: 'Power and triggers', name: 'Socket block', byLook: blocks, note: 'one a circuit, never one into another' }),
    orderLine({ key: 'power.battery', case: 'Power and triggers', name: 'Charged battery', byLook: looks.map((look) => batteries(plan, look)), note: 'for the frames planned' }),
    orderLine({
      key: 'power.trigger', case: 'Power and triggers', name: 'Radio trigger', spare: 1, note: 'with fresh batteries',
      byLook: looks.map(({ camera }) => (camera.radioTrigger ? 1 : 0)),
    }),
  ]
}

/** At least one a battery head; more where the frames planned ask for it. */
function batteries(plan: Plan, look: Look): number {
  return Object.values(look.lights).filter(({ on }) => on).reduce((sum, light) => {
    const head = plan.heads[light.headId]
    if (head?.supply !== 'battery') return sum
    return sum + (chargeUse(head, light.energyJoules, look.framesPlanned ?? 1)?.charges ?? 1)
  }, 0)
}
