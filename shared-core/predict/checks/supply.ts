import { changeLight } from '../../plan/edits/lights.ts'
import type { Snag } from '../snag.ts'
import { ampsOf, chargeUse, headLoads, MOST_BATTERY_PERCENT, MOST_CIRCUIT_PERCENT, percentOfBreaker, type HeadLoad } from '../supply.ts'
import { mendBy, type Check, type CheckView } from './check.ts'

/** All heads of a circuit recycling at once. Heads nobody has plugged in yet go where there is most room. */
export const circuitLoad: Check = (view) => {
  const { plan, look, measured: { lookId } } = view
  const loads = headLoads(plan, look)
  return Object.entries(plan.room.circuits).flatMap(([circuitId, { label, breakerAmps }]): Snag[] => {
    const here = loads.filter((load) => load.circuitId === circuitId)
    const percent = percentOfBreaker(here, breakerAmps)
    if (percent <= MOST_CIRCUIT_PERCENT) return []
    const elsewhere = freest(view, loads, circuitId)
    const mover = here.find((load) => elsewhere && fits(load, elsewhere.amps, elsewhere.breakerAmps))
    const letters = here.map(({ lightId }) => look.lights[lightId]?.letter ?? '').sort().join(', ')
    return [{
      key: `circuit-load:${circuitId}`,
      rule: 'circuit-load',
      severity: 'stop',
      message: `${label || 'A circuit'} carries ${Math.round(percent)} % of its breaker while ${letters} recycle`,
      action: mover
        ? `Plug ${look.lights[mover.lightId]?.letter} into ${elsewhere!.label || 'another circuit'}`
        : 'Bring in another circuit, or slow the recycling down; a licensed electrician decides what the building can carry',
      value: percent,
      threshold: MOST_CIRCUIT_PERCENT,
      unit: '% of the breaker',
      about: [...here.map(({ lightId }) => lightId), 'room'],
      ...(mover
        ? mendBy(`${look.lights[mover.lightId]?.letter} into ${elsewhere!.label || 'another circuit'}`,
          changeLight(plan, lookId, mover.lightId, { circuitId: elsewhere!.id }))
        : {}),
    }]
  })
}

/** Frames planned against what one charge gives at this power. */
export const battery: Check = ({ plan, look, measured: { lights } }) => {
  const frames = look.framesPlanned
  if (frames === null) return []
  return lights.flatMap((light): Snag[] => {
    const head = plan.heads[look.lights[light.id]?.headId ?? '']
    const use = light.on && head ? chargeUse(head, light.energyJoules, frames) : null
    if (use === null || use.percent <= MOST_BATTERY_PERCENT) return []
    const { percent, charges } = use
    return [{
      key: `battery:${light.id}`,
      rule: 'battery',
      severity: 'note',
      message: `${light.letter}: ${frames} frames take ${Math.round(percent)} % of one charge`,
      action: `Pack ${charges} charged batteries for ${light.letter}, or run it from the mains`,
      value: percent,
      threshold: MOST_BATTERY_PERCENT,
      unit: '% of a charge',
      about: [light.id],
    }]
  })
}

function freest({ plan }: CheckView, loads: readonly HeadLoad[], notId: string) {
  return Object.entries(plan.room.circuits).filter(([id]) => id !== notId)
    .map(([id, { label, breakerAmps }]) => ({ id, label, breakerAmps, amps: ampsOf(loads.filter(({ circuitId }) => circuitId === id)) }))
    .sort((a, b) => a.amps / a.breakerAmps - b.amps / b.breakerAmps)[0]
}

function fits(load: HeadLoad, amps: number, breakerAmps: number): boolean {
  return (100 * (amps + load.amps)) / breakerAmps <= MOST_CIRCUIT_PERCENT
}
