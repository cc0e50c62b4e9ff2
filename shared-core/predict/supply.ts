import { recycleAtEnergy } from '../exposure/power.ts'
import type { Head } from '../plan/schema/kit.ts'
import type { Light, Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Room } from '../plan/schema/room.ts'

/** Of a breaker's rating, and of a battery's charge (common practice, no source; local code and the electrician rule). */
export const MOST_CIRCUIT_PERCENT = 80
export const MOST_BATTERY_PERCENT = 70
/** Of what a flash head draws while it recycles, this much ends in its capacitors (common practice, no source). */
const CHARGING_EFFICIENCY = 0.7

export interface HeadLoad {
  readonly lightId: string
  readonly letter: string
  readonly watts: number
  readonly amps: number
  /** For how long after a frame, in seconds. */
  readonly seconds: number
  /** Its lamp's share of the watts, which goes on after recycling. */
  readonly lampWatts: number
  /** Empty only where the room has no circuit at all. */
  readonly circuitId: string
  /** Whether the plan says so; otherwise it is where there is most room. */
  readonly isPlugged: boolean
}

/**
 * What each mains head of a look draws while it recycles: energy over recycle time over the charger's efficiency, and
 * its modelling lamp. Heads nobody has plugged in yet go where there is most room, the largest first.
 */
export function headLoads(plan: Plan, look: Look): readonly HeadLoad[] {
  const loads = Object.entries(look.lights).flatMap(([lightId, light]) => headLoad(plan, lightId, light))
    .sort((a, b) => a.letter.localeCompare(b.letter, 'en'))
  const plugged = loads.filter(({ isPlugged }) => isPlugged)
  for (const load of loads.filter(({ isPlugged }) => !isPlugged).sort((a, b) => b.amps - a.amps)) {
    plugged.push({ ...load, circuitId: roomiest(plan.room.circuits, plugged, load) })
  }
  return plugged
}

function headLoad(plan: Plan, lightId: string, light: Light): readonly HeadLoad[] {
  const head = plan.heads[light.headId]
  if (!light.on || head?.supply !== 'mains') return []
  const seconds = recycleAtEnergy(head, head.recycleSecondsAtFull, light.energyJoules)
  const lampWatts = head.modellingLamp === 'none' ? 0 : head.modellingLampWatts
  const watts = light.energyJoules / seconds / CHARGING_EFFICIENCY + lampWatts
  const isPlugged = Object.hasOwn(plan.room.circuits, light.circuitId)
  const circuitId = isPlugged ? light.circuitId : ''
  return [{ lightId, letter: light.letter, watts, amps: watts / plan.room.mainsVolts, seconds, lampWatts, circuitId, isPlugged }]
}

function roomiest(circuits: Room['circuits'], plugged: readonly HeadLoad[], load: HeadLoad): string {
  const withIt = Object.entries(circuits).map(([id, { breakerAmps }]) =>
    ({ id, percent: percentOfBreaker([...plugged.filter(({ circuitId }) => circuitId === id), load], breakerAmps) }))
  return withIt.sort((a, b) => a.percent - b.percent)[0]?.id ?? ''
}

/** Percent of a breaker that these draw together. */
export function percentOfBreaker(loads: readonly { readonly amps: number }[], breakerAmps: number): number {
  return (100 * ampsOf(loads)) / breakerAmps
}

export function ampsOf(loads: readonly { readonly amps: number }[]): number {
  return loads.reduce((sum, { amps }) => sum + amps, 0)
}

export interface ChargeUse {
  /** Flashes of one charge at this power: in proportion to the energy. */
  readonly flashesPerCharge: number
  /** Of one charge; above `MOST_BATTERY_PERCENT` another battery is packed. */
  readonly percent: number
  /** Charged batteries to pack. */
  readonly charges: number
}

/** What the frames take of a battery head's charge at this power; null for the mains, or where nobody said how many it gives. */
export function chargeUse(head: Head, energyJoules: number, frames: number): ChargeUse | null {
  if (head.supply !== 'battery' || head.flashesPerChargeAtFull === null) return null
  const flashesPerCharge = head.flashesPerChargeAtFull * (head.fullEnergyJoules / energyJoules)
  const percent = (100 * frames) / flashesPerCharge
  return { flashesPerCharge, percent, charges: Math.ceil(percent / MOST_BATTERY_PERCENT) }
}
