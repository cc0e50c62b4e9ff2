import { changeLight } from '../../plan/edits/lights.ts'
import type { Snag } from '../snag.ts'
import { mendBy, type Check, type CheckView } from './check.ts'

/** Of a breaker's rating, and of a battery's charge (common practice, no source; local code and the electrician rule). */
const MOST_CIRCUIT_PERCENT = 80
const MOST_BATTERY_PERCENT = 70
/** Of what a flash head draws while it recycles, this much ends in its capacitors (common practice, no source). */
const CHARGING_EFFICIENCY = 0.7

interface Load {
  readonly lightId: string
  readonly amps: number
  readonly circuitId: string
}

/** All heads of a circuit recycling at once. Heads nobody has plugged in yet go where there is most room. */
export const circuitLoad: Check = (view) => {
  const { plan, look, measured: { lookId } } = view
  const loads = loadsOf(view)
  return Object.entries(plan.room.circuits).flatMap(([circuitId, { label, breakerAmps }]): Snag[] => {
    const here = loads.filter((load) => load.circuitId === circuitId)
    const percent = percentOf(here, breakerAmps)
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
    if (!light.on || head?.supply !== 'battery' || head.flashesPerChargeAtFull === null) return []
    const flashes = head.flashesPerChargeAtFull * (head.fullEnergyJoules / light.energyJoules)
    const percent = (100 * frames) / flashes
    if (percent <= MOST_BATTERY_PERCENT) return []
    const charges = Math.ceil(percent / MOST_BATTERY_PERCENT)
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

function loadsOf({ plan, look, measured }: CheckView): Load[] {
  const circuits = Object.entries(plan.room.circuits)
  const loads = measured.lights.flatMap((light): Load[] => {
    const setup = look.lights[light.id]
    const head = setup && plan.heads[setup.headId]
    if (!setup || !light.on || head?.supply !== 'mains') return []
    const lampWatts = head.modellingLamp === 'none' ? 0 : head.modellingLampWatts
    const watts = light.energyJoules / light.recycleSeconds / CHARGING_EFFICIENCY + lampWatts
    const isPlugged = Object.hasOwn(plan.room.circuits, setup.circuitId)
    return [{ lightId: light.id, amps: watts / plan.room.mainsVolts, circuitId: isPlugged ? setup.circuitId : '' }]
  })
  const plugged = loads.filter(({ circuitId }) => circuitId !== '')
  for (const load of loads.filter(({ circuitId }) => circuitId === '').sort((a, b) => b.amps - a.amps)) {
    const roomiest = circuits
      .map(([id, { breakerAmps }]) => ({ id, percent: percentOf([...plugged.filter(({ circuitId }) => circuitId === id), load], breakerAmps) }))
      .sort((a, b) => a.percent - b.percent)[0]
    if (roomiest) plugged.push({ ...load, circuitId: roomiest.id })
  }
  return plugged
}

function percentOf(loads: readonly Load[], breakerAmps: number): number {
  return (100 * ampsOf(loads)) / breakerAmps
}

function ampsOf(loads: readonly Load[]): number {
  return loads.reduce((sum, { amps }) => sum + amps, 0)
}

function freest({ plan }: CheckView, loads: readonly Load[], notId: string) {
  return Object.entries(plan.room.circuits).filter(([id]) => id !== notId)
    .map(([id, { label, breakerAmps }]) => ({ id, label, breakerAmps, amps: ampsOf(loads.filter(({ circuitId }) => circuitId === id)) }))
    .sort((a, b) => a.amps / a.breakerAmps - b.amps / b.breakerAmps)[0]
}

function fits(load: Load, amps: number, breakerAmps: number): boolean {
  return (100 * (amps + load.amps)) / breakerAmps <= MOST_CIRCUIT_PERCENT
}
