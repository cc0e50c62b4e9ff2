import type { PlanChange } from '../plan/edit.ts'
import type { Light } from '../plan/schema/look.ts'
import type { Place } from '../plan/schema/quantities.ts'
import type { Vector } from '../arithmetic/vector.ts'

const LEAST_JOULES = 0.01
const MOST_JOULES = 20_000
const FARTHEST_METRES = 50

/** Sets a light's stored energy, in joules, held to what a plan can say (0.01-20000). */
export function energyChange(lookId: string, lightId: string, energyJoules: number): PlanChange {
  return { path: pathTo(lookId, lightId, 'energyJoules'), set: Math.min(Math.max(energyJoules, LEAST_JOULES), MOST_JOULES) }
}

/** Sets the sheets of a light, from tube to subject. */
export function gelChange(lookId: string, lightId: string, gelIds: readonly string[]): PlanChange {
  return { path: pathTo(lookId, lightId, 'gelIds'), set: gelIds }
}

/** Sets a light's place or aim, in metres from the T, to the millimetre that a tape can read. */
export function placeChange(lookId: string, lightId: string, key: 'place' | 'aim', [x, y, z]: Vector): PlanChange {
  return { path: pathTo(lookId, lightId, key), set: placeAt([x, y, z]) }
}

/** A place as the plan writes it: to the millimetre, inside the bounds of a plan. */
export function placeAt([x, y, z]: Vector): Place {
  return { xMetres: held(x), yMetres: held(y), zMetres: held(z) }
}

/** Sets any one leaf of a light that holds a plain value. */
export function leafChange<Key extends 'grid' | 'headId' | 'modifierId' | 'on' | 'support'>(
  lookId: string, lightId: string, key: Key, value: Light[Key],
): PlanChange {
  return { path: pathTo(lookId, lightId, key), set: value }
}

const pathTo = (lookId: string, lightId: string, key: string) => ['looks', lookId, 'lights', lightId, key]
const held = (metres: number): number => Math.round(Math.min(Math.max(metres, -FARTHEST_METRES), FARTHEST_METRES) * 1000) / 1000 || 0
