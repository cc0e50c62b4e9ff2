import * as Y from 'yjs'
import { equalJson, jsonFromShared } from '../../shared-core/document/branches.ts'
import { planRoot } from '../../shared-core/document/planRoot.ts'

/**
 * Whether `lost` holds changes of the plan that are missing in `kept`: whether laying it over would make another plan.
 * What `kept` has beyond `lost` does not count.
 */
export function holdsUnsent(lost: Y.Doc, kept: Y.Doc): boolean {
  const both = new Y.Doc()
  Y.applyUpdate(both, Y.encodeStateAsUpdate(kept))
  Y.applyUpdate(both, Y.encodeStateAsUpdate(lost))
  const differs = !equalJson(jsonFromShared(planRoot(both)), jsonFromShared(planRoot(kept)))
  both.destroy()
  return differs
}
