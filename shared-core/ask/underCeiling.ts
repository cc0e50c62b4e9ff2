import { add, scale, subtract, type Vector } from '../arithmetic/vector.ts'
import { applyEdit, type PlanChange, type PlanEdit } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import { vectorOf } from '../set/emitter.ts'
import { placeAt, placeChange } from './lightChanges.ts'
import type { Remedy } from './remedies.ts'

const MOST_TRIES = 6
const CLEAR_METRES = 0.01
/** Nearer than by this share of its way to what it is aimed at, a light is another light. */
const MOST_OF_BEAM = 0.3

/** How lights that are too high come down: straight, or along their beam so that they keep their slant. */
const WAYS = [
  { words: 'lowered', towardsAim: false },
  { words: 'lowered and nearer, at the same slant', towardsAim: true },
] as const

/** The room at another height, and all that hung too high brought under it; as it stands where it fits. */
export function underCeiling(plan: Plan, lookId: string, heightMetres: number, predictor: Predictor): readonly Remedy[] {
  const room: PlanChange = { path: ['room', 'heightMetres'], set: heightMetres }
  return WAYS.map(({ words, towardsAim }) => {
    let edit: PlanEdit = { name: 'fewerHeads', changes: [room] }
    const lowered = new Set<string>()
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const now = applyEdit(plan, edit)
      const high = predictor(now, lookId).snags.filter(({ rule, about, message }) =>
        rule === 'outside-room' && message.includes('ceiling') && about[0] !== undefined)
      if (high.length === 0) break
      edit = { ...edit, changes: [...edit.changes, ...high.flatMap(({ about, value }) => lower(now, lookId, about[0]!, value + CLEAR_METRES, towardsAim))] }
      for (const { about } of high) lowered.add(nameOf(plan, lookId, about[0]!))
    }
    return { title: lowered.size === 0 ? 'All fits as it is' : `${[...lowered].sort().join(', ')} ${words}`, edit }
  }).filter(({ title }, i, all) => all.findIndex((each) => each.title === title) === i)
}

function lower(plan: Plan, lookId: string, id: string, metres: number, towardsAim: boolean): PlanChange[] {
  const look = plan.looks[lookId]!
  const light = look.lights[id]
  const piece = look.pieces[id]
  if (light) {
    const place = vectorOf(light.place)
    const beam = subtract(vectorOf(light.aim), place)
    // Along the beam as far as brings it down; where that would come too near, it can only be lowered.
    const share = -beam[2] > 0 ? metres / -beam[2] : Infinity
    const along: Vector | null = towardsAim && share <= MOST_OF_BEAM ? scale(beam, share) : null
    return [placeChange(lookId, id, 'place', add(place, along ?? [0, 0, -metres]))]
  }
  return piece ? [{ path: ['looks', lookId, 'pieces', id, 'place'], set: placeAt(add(vectorOf(piece.place), [0, 0, -metres])) }] : []
}

function nameOf(plan: Plan, lookId: string, id: string): string {
  const look = plan.looks[lookId]!
  return look.lights[id]?.letter ?? look.pieces[id]?.label ?? id
}
