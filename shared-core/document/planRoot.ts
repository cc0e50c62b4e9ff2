import * as Y from 'yjs'

/** The one map of a plan document that holds the plan; a record or group of the plan is a map below it. */
export function planRoot(doc: Y.Doc): Y.Map<unknown> {
  return doc.getMap('plan')
}
