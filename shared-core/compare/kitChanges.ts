import type { Json, PlanPath } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { LookChange } from './changes.ts'

const KINDS = ['heads', 'modifiers', 'gels'] as const
type Kind = (typeof KINDS)[number]

/**
 * What was put into the job's kit or taken out of it, and hangs on no light of the look: what does is told with its
 * light, and could not be taken back without it.
 */
export function kitChanges(before: Plan, after: Plan, lookId: string): readonly LookChange[] {
  const inUse = new Set([before, after].flatMap(({ looks }) => Object.values(looks[lookId]?.lights ?? {}))
    .flatMap(({ headId, modifierId, gelIds }) => [`heads/${headId}`, `modifiers/${modifierId}`, ...gelIds.map((id) => `gels/${id}`)]))
  const keys = KINDS.flatMap((kind) => [...new Set([...Object.keys(before[kind]), ...Object.keys(after[kind])])].map((id) => [kind, id] as const))
  return keys.flatMap(([kind, id]): LookChange[] => {
    const [was, is] = [entryOf(before, kind, id), entryOf(after, kind, id)]
    const key = `${kind}/${id}`
    if ((was === undefined) === (is === undefined) || inUse.has(key)) return []
    const words = is === undefined ? `kit: ${was!.name} taken out` : `kit: ${is.name} added`
    return [{ key, words, make: put([kind, id], is), takeBack: put([kind, id], was) }]
  })
}

function entryOf(plan: Plan, kind: Kind, id: string): { readonly name: string } | undefined {
  return Object.hasOwn(plan[kind], id) ? plan[kind][id] : undefined
}

function put(path: PlanPath, entry: object | undefined): LookChange['make'] {
  return { name: 'takeOver', changes: [entry === undefined ? { path, remove: true } : { path, set: entry as Json }] }
}
