import * as Y from 'yjs'
import type { Json } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { equalJson, isGroup, jsonFromShared, sharedFromJson } from './branches.ts'
import type { Origin } from './origin.ts'
import { planRoot } from './planRoot.ts'

/**
 * Makes the document hold this plan, in one transaction. Only what differs is written, so that a plan written twice
 * adds nothing, and what others change at the same moment elsewhere stays theirs.
 */
export function writePlanToDocument(doc: Y.Doc, plan: Plan, origin: Origin = { by: 'load' }): void {
  doc.transact(() => writeGroup(planRoot(doc), plan as unknown as { readonly [key: string]: Json }), origin)
}

/** Makes a map hold this group, writing only what differs. Within a transaction. */
export function writeGroup(map: Y.Map<unknown>, group: { readonly [key: string]: Json }): void {
  for (const key of [...map.keys()]) {
    if (!Object.hasOwn(group, key)) map.delete(key)
  }
  for (const [key, value] of Object.entries(group)) {
    const before = map.get(key)
    if (isGroup(value) && before instanceof Y.Map) writeGroup(before, value)
    else if (before === undefined || !equalJson(jsonFromShared(before), value)) map.set(key, sharedFromJson(value))
  }
}
