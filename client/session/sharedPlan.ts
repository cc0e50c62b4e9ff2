import type * as Y from 'yjs'
import { applyEditToDocument } from '../../shared-core/document/applyEdit.ts'
import { readPlanFromDocument, watchPlan } from '../../shared-core/document/readPlan.ts'
import { createUndo, type Undo } from '../../shared-core/document/undo.ts'
import type { ChangedBy, PlanReading, PlanSource } from './planSource.ts'

export interface SharedPlan extends PlanSource {
  /** The plan, or null while the document holds none; with the reason in words where there is one. */
  readable(): PlanReading | { readonly plan: null; readonly repairs: readonly string[] }
  /** Goes over to another document; until it holds a plan, the last one stays on the board. */
  moveTo(doc: Y.Doc): void
  close(): void
}

export interface SharedPlanListener {
  readonly say: (words: string) => void
  /** This seat wrote something. */
  readonly onWrite: () => void
}

/** The board's plan in the shared document. Edits and undo are this seat's. */
export function createSharedPlan(first: Y.Doc, seatId: string, { say, onWrite }: SharedPlanListener): SharedPlan {
  const listeners = new Set<(by: ChangedBy) => void>()
  const tell = (by: ChangedBy) => listeners.forEach((listener) => listener(by))
  let changedBy: ChangedBy = null
  let doc = first
  let last: PlanReading | null = null
  let undo: Undo
  let letGo: () => void = () => undefined

  function hold(next: Y.Doc): void {
    letGo()
    doc = next
    undo = createUndo(doc, { by: 'person', seatId })
    const readAuthors = (transaction: Y.Transaction) => void (changedBy = authorsOf(transaction))
    next.on('beforeObserverCalls', readAuthors)
    const stops = [
      watchPlan(doc, () => tell(changedBy)), undo.onChange(() => tell(changedBy)), undo.close,
      () => next.off('beforeObserverCalls', readAuthors),
    ]
    letGo = () => stops.forEach((stop) => stop())
  }
  hold(first)

  function readable(): ReturnType<SharedPlan['readable']> {
    const { plan, repairs } = readPlanFromDocument(doc, last?.plan)
    if (plan === null) return { plan, repairs }
    last = { plan, repairs }
    return last
  }

  function read(): PlanReading {
    const now = readable()
    if (now.plan !== null) return now
    if (last === null) throw new Error('The document holds no plan yet')
    return { plan: last.plan, repairs: now.repairs }
  }

  function step(direction: 'undo' | 'redo'): void {
    const outcome = undo[direction]()
    onWrite()
    say(outcome.ok ? outcome.words : outcome.message)
  }

  return {
    readable,
    read,
    write(edit) {
      onWrite()
      const { missed } = applyEditToDocument(doc, edit, { by: 'person', seatId })
      if (missed.length > 0) say('Part of that is gone: somebody took it out of the plan')
    },
    undo: () => step('undo'),
    redo: () => step('redo'),
    canUndo: () => undo.canUndo,
    canRedo: () => undo.canRedo,
    onChange(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    moveTo(next) {
      hold(next)
      tell(null)
    },
    close: () => letGo(),
  }
}

/** A change of this page's own, or the client ids whose clocks it moved on. */
function authorsOf({ local, beforeState, afterState }: Y.Transaction): ChangedBy {
  return local ? 'self' : [...afterState].filter(([id, clock]) => clock > (beforeState.get(id) ?? 0)).map(([id]) => id)
}
