import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { ampsOf, headLoads, percentOfBreaker } from '../predict/supply.ts'
import type { Appliance } from '../rig/appliances.ts'

export type Appliances = Readonly<Record<string, Appliance>>

/** One plug: a head while it recycles, or an appliance. */
export interface Plug {
  readonly kind: 'head' | 'appliance'
  readonly id: string
  /** A head's letter, an appliance's name. */
  readonly label: string
  readonly watts: number
  readonly amps: number
  readonly on: boolean
  /** How long it draws this after a frame, in seconds; null for what draws it all the time. */
  readonly seconds: number | null
  /** Empty for an appliance that nobody has plugged in. */
  readonly circuitId: string
  /** Whether somebody said so; a head that nobody plugged in is counted where there is most room. */
  readonly isPlugged: boolean
  /** It wants a circuit on which no head recycles. */
  readonly apart: boolean
}

export interface CircuitState {
  readonly circuitId: string
  readonly label: string
  readonly breakerAmps: number
  readonly plugs: readonly Plug[]
  /** At the worst moment of a frame: all heads recycle at once, and whatever is on is on. */
  readonly watts: number
  readonly amps: number
  readonly percent: number
  /** Of the heads alone: what the board's own check says. */
  readonly headsPercent: number
  /** For how long after a frame the worst lasts, in seconds; null without heads. */
  readonly worstSeconds: number | null
  /** Were everything on this circuit switched on. */
  readonly allOnPercent: number
}

/** Every plug of a look and of the studio's appliances. */
export function plugsOf(plan: Plan, look: Look, appliances: Appliances): readonly Plug[] {
  const heads = headLoads(plan, look).map((load): Plug => ({
    kind: 'head', id: load.lightId, label: load.letter, watts: load.watts, amps: load.amps, on: true,
    seconds: load.seconds, circuitId: load.circuitId, isPlugged: load.isPlugged, apart: false,
  }))
  const others = Object.entries(appliances).map(([id, { name, watts, circuitId, on, apart }]): Plug => {
    const isPlugged = Object.hasOwn(plan.room.circuits, circuitId)
    return {
      kind: 'appliance', id, label: name, watts, amps: watts / plan.room.mainsVolts, on, seconds: null,
      circuitId: isPlugged ? circuitId : '', isPlugged, apart,
    }
  })
  return [...heads, ...others]
}

/** Each circuit of the room at the worst moment of a frame of this look, by label. */
export function circuitStates(plan: Plan, look: Look, appliances: Appliances): readonly CircuitState[] {
  const plugs = plugsOf(plan, look, appliances)
  return Object.entries(plan.room.circuits).map(([circuitId, { label, breakerAmps }]): CircuitState => {
    const here = plugs.filter((plug) => plug.circuitId === circuitId)
    const on = here.filter((plug) => plug.on)
    const heads = here.filter(({ kind }) => kind === 'head')
    return {
      circuitId, label, breakerAmps, plugs: here,
      watts: on.reduce((sum, { watts }) => sum + watts, 0),
      amps: ampsOf(on),
      percent: percentOfBreaker(on, breakerAmps),
      headsPercent: percentOfBreaker(heads, breakerAmps),
      worstSeconds: heads.length === 0 ? null : Math.min(...heads.map(({ seconds }) => seconds!)),
      allOnPercent: percentOfBreaker(here, breakerAmps),
    }
  }).sort((a, b) => a.label.localeCompare(b.label, 'en') || (a.circuitId < b.circuitId ? -1 : 1))
}
