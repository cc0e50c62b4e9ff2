import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'

/**
 * The plan with its look put under another look's id, and its lights and pieces under the ids of those with the same
 * letter or label there: two looks of a job become two states of one.
 * @throws RangeError when a plan has no such look
 */
export function asLook(plan: Plan, lookId: string, like: Plan, likeId: string): Plan {
  const [look, model] = [plan.looks[lookId], like.looks[likeId]]
  if (look === undefined || model === undefined) throw new RangeError('The plan has no such look')
  if (lookId === likeId) return plan
  const renamed: Look = {
    ...look,
    lights: renamedLike(look.lights, model.lights, ({ letter }) => letter),
    pieces: renamedLike(look.pieces, model.pieces, ({ label, kind }) => `${kind} ${label}`),
    points: renamedLike(look.points, model.points, ({ label }) => label),
  }
  return { ...plan, looks: { ...plan.looks, [likeId]: renamed } }
}

function renamedLike<Thing>(
  things: Readonly<Record<string, Thing>>, like: Readonly<Record<string, Thing>>, nameOf: (thing: Thing) => string,
): Record<string, Thing> {
  const idsByName = new Map(Object.entries(like).map(([id, thing]) => [nameOf(thing), id]))
  const taken = new Set<string>()
  return Object.fromEntries(Object.entries(things).map(([id, thing]) => {
    const same = idsByName.get(nameOf(thing))
    // An id of its own that the other look uses for something else must not make the two one.
    const newId = same !== undefined && !taken.has(same) ? same : id in like ? `${id}-other` : id
    taken.add(newId)
    return [newId, thing]
  }))
}

/** The plan with what the other's kit holds beside its own, so that any light of the other can stand in it. */
export function withKitOf(plan: Plan, other: Plan): Plan {
  return {
    ...plan,
    heads: { ...other.heads, ...plan.heads },
    modifiers: { ...other.modifiers, ...plan.modifiers },
    gels: { ...other.gels, ...plan.gels },
  }
}
