import type * as Y from 'yjs'
import type { PlanChange } from '../plan/edit.ts'
import { refuse, type Result } from '../plan/result.ts'
import { applyEditToDocument, editsOf, sharedAt, type AppliedEdit, type DoneChange } from './applyEdit.ts'
import { equalJson, jsonFromShared } from './branches.ts'
import { isEditOf, type Origin } from './origin.ts'
import { planRoot } from './planRoot.ts'

/** Undo and redo of what one person did, and of nothing else. */
export interface Undo {
  readonly canUndo: boolean
  readonly canRedo: boolean
  /** Takes back the last edit; the words say which, and what of it others had changed since. */
  undo(): Result<{ readonly words: string }>
  redo(): Result<{ readonly words: string }>
  /** Called whenever `canUndo` or `canRedo` may have changed. */
  onChange(listener: () => void): () => void
  /** Stops keeping history. */
  close(): void
}

type Direction = 'undo' | 'redo'

/**
 * Keeps the edits that `origin`'s person makes in this document. Not the undo of the document library, which would
 * delete a light that somebody else has worked on since: here a place goes back only while it still holds what this
 * person's edit put there. There is no limit to it: an edit is a few hundred bytes.
 */
export function createUndo(doc: Y.Doc, origin: Origin & { readonly by: 'person' }): Undo {
  const stacks: Record<Direction, AppliedEdit[]> = { undo: [], redo: [] }
  const listeners = new Set<() => void>()
  const tell = () => listeners.forEach((listener) => listener())

  const keep = (transaction: Y.Transaction) => {
    if (!isEditOf(transaction.origin, origin.seatId)) return
    const edits = editsOf(transaction).filter((edit) => edit.done.length > 0)
    if (edits.length === 0) return
    stacks.undo.push(...edits)
    stacks.redo = []
    tell()
  }
  doc.on('afterTransaction', keep)

  const go = (direction: Direction): Result<{ words: string }> => {
    const step = stacks[direction].pop()
    if (!step) return refuse(`There is nothing of yours to ${direction}.`)
    const outcome = goBack(doc, step, origin.seatId)
    if (outcome.done.length > 0) stacks[direction === 'undo' ? 'redo' : 'undo'].push(outcome)
    tell()
    if (outcome.done.length === 0) {
      return refuse(`Somebody else has changed that since, so your ${direction} left it alone.`)
    }
    const some = outcome.done.length < step.done.length ? ' What somebody else has changed since stays theirs.' : ''
    return { ok: true, words: `${direction === 'undo' ? 'Undone' : 'Redone'}: ${wordsOfName(step.name)}.${some}` }
  }

  return {
    get canUndo() { return stacks.undo.length > 0 },
    get canRedo() { return stacks.redo.length > 0 },
    undo: () => go('undo'),
    redo: () => go('redo'),
    onChange: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    close: () => {
      doc.off('afterTransaction', keep)
      listeners.clear()
    },
  }
}

/** Takes each place back, last first, if it still holds what the step put there. One transaction. */
function goBack(doc: Y.Doc, step: AppliedEdit, seatId: string): AppliedEdit {
  const origin: Origin = { by: 'undo', seatId }
  const done: DoneChange[] = []
  doc.transact(() => {
    for (const { path, before, after } of [...step.done].reverse()) {
      if (!equalJson(jsonFromShared(sharedAt(planRoot(doc), path)), after)) continue
      const change: PlanChange = before === undefined ? { path, remove: true } : { path, set: before }
      done.push(...applyEditToDocument(doc, { name: step.name, changes: [change] }, origin).done)
    }
  }, origin)
  return { name: step.name, done, missed: [] }
}

/** "moveLight" read aloud: "move light". */
function wordsOfName(name: string): string {
  return name.replace(/([A-Z])/g, ' $1').toLowerCase()
}
