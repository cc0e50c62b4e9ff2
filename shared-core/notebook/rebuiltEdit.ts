import { addLook } from '../plan/edits/looks.ts'
import { together } from '../plan/edits/adding.ts'
import type { EditResult } from '../plan/edits/changing.ts'
import type { Json, PlanEdit } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Rebuilt } from './rebuild.ts'

/** Puts a rebuilt look beside the looks of a job, with whatever kit it needs that the job does not list; room and other looks stay. */
export function rebuiltEdit(job: Plan, { plan }: Rebuilt, lookId: string, name: string): EditResult {
  const look = plan.looks[lookId]!
  const added = addLook(job, { ...look, name: name.slice(0, 120), order: nextOrder(job), accepted: {} })
  if (!added.ok) return added
  const needed = { heads: idsOf(look, 'headId'), modifiers: idsOf(look, 'modifierId'), gels: new Set(Object.values(look.lights).flatMap(({ gelIds }) => gelIds)) }
  const kit: PlanEdit = {
    name: 'rebuild',
    changes: (['heads', 'modifiers', 'gels'] as const).flatMap((kind) => [...needed[kind]].flatMap((id) => {
      const thing = plan[kind][id]
      return job[kind][id] === undefined && thing !== undefined ? [{ path: [kind, id], set: thing as Json }] : []
    })),
  }
  return { ok: true, edit: together('rebuild', kit, added.edit) }
}

function idsOf(look: Plan['looks'][string], key: 'headId' | 'modifierId'): ReadonlySet<string> {
  return new Set(Object.values(look.lights).map((light) => light[key]))
}

function nextOrder({ looks }: Plan): number {
  return Math.min(1_000, Math.max(0, ...Object.values(looks).map(({ order }) => order)) + 1)
}

/**
 * Takes over what the meter taught of pieces of the same name, where this job's kit has learned nothing of its own yet.
 * @returns the edit, and what it takes over in words
 */
export function learnedFrom(job: Plan, kept: Plan): { readonly edit: PlanEdit; readonly words: readonly string[] } {
  const words: string[] = []
  const changes = (['heads', 'modifiers', 'gels'] as const).flatMap((kind) => Object.entries(job[kind]).flatMap(([id, thing]) => {
    const same = Object.values(kept[kind]).find(({ name, learnedStops }) => name === thing.name && learnedStops !== 0)
    if (same === undefined || thing.learnedStops !== 0) return []
    words.push(`${thing.name} ${same.learnedStops > 0 ? '+' : '−'}${Math.abs(same.learnedStops).toFixed(1)}`)
    return [{ path: [kind, id, 'learnedStops'], set: same.learnedStops }]
  }))
  return { edit: { name: 'learned', changes }, words }
}
