import * as Y from 'yjs'
import { writePlanToDocument } from '../shared-core/document/writePlan.ts'
import type { Plan } from '../shared-core/plan/schema/plan.ts'

/** The plan as the first update of a `plan` document. */
export function planUpdate(plan: Plan): Uint8Array {
  const doc = new Y.Doc()
  writePlanToDocument(doc, plan)
  const update = Y.encodeStateAsUpdate(doc)
  doc.destroy()
  return update
}
