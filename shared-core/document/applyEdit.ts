import * as Y from 'yjs'
import type { Json, PlanChange, PlanEdit, PlanPath } from '../plan/edit.ts'
import { equalJson, jsonFromShared, sharedFromJson } from './branches.ts'
import type { Origin } from './origin.ts'
import { planRoot } from './planRoot.ts'

/** One place an edit really changed, with what stood there before and after; undefined for nothing. */
export interface DoneChange {
  readonly path: PlanPath
  readonly before: Json | undefined
  readonly after: Json | undefined
}

export interface AppliedEdit {
  readonly name: string
  readonly done: readonly DoneChange[]
  /** Changes that found nothing to change: what they were for was removed by somebody else. */
  readonly missed: readonly PlanPath[]
}

const appliedEdits = Symbol('applied edits')

/**
 * Writes an edit into the shared document in one transaction. A change below something that is no longer there is left
 * out and reported: writing it would bring back half a light.
 */
export function applyEditToDocument(doc: Y.Doc, edit: PlanEdit, origin: Origin): AppliedEdit {
  const done: DoneChange[] = []
  const missed: PlanPath[] = []
  const applied: AppliedEdit = { name: edit.name, done, missed }
  doc.transact((transaction) => {
    for (const change of edit.changes) {
      const outcome = applyChange(planRoot(doc), change)
      if (outcome === 'missed') missed.push(change.path)
      else if (outcome) done.push(outcome)
    }
    transaction.meta.set(appliedEdits, [...editsOf(transaction), applied])
  }, origin)
  return applied
}

/** The edits a transaction carried out, for those who keep a history of them. */
export function editsOf(transaction: Y.Transaction): readonly AppliedEdit[] {
  return (transaction.meta.get(appliedEdits) as AppliedEdit[] | undefined) ?? []
}

/** What stands at a path of the shared document, or undefined. */
export function sharedAt(root: Y.Map<unknown>, path: PlanPath): unknown {
  let value: unknown = root
  for (const key of path) {
    if (!(value instanceof Y.Map)) return undefined
    value = value.get(key)
  }
  return value
}

function applyChange(root: Y.Map<unknown>, change: PlanChange): DoneChange | 'missed' | null {
  const { path } = change
  const parent = sharedAt(root, path.slice(0, -1))
  const key = path[path.length - 1]
  // An empty root is a document that has no plan yet: nothing in it can be edited.
  if (key === undefined || !(parent instanceof Y.Map) || root.size === 0) return 'missed'
  const before = jsonFromShared(parent.get(key))
  if ('remove' in change) {
    if (!parent.has(key)) return 'missed'
    parent.delete(key)
    return { path, before, after: undefined }
  }
  if (equalJson(before, change.set)) return null
  parent.set(key, sharedFromJson(change.set))
  return { path, before, after: change.set }
}
