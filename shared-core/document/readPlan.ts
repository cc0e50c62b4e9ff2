import type * as Y from 'yjs'
import { migrate } from '../plan/migrations/migrate.ts'
import { PlanSalvage } from '../plan/salvage.ts'
import { shareStructure } from '../plan/reading/shareStructure.ts'
import { SCHEMA_VERSION, type Plan } from '../plan/schema/plan.ts'
import { planRoot } from './planRoot.ts'
import { DocumentSnapshot } from './snapshot.ts'

export interface PlanState {
  /** Null while the document holds no plan, or one from a newer version of this program. */
  readonly plan: Plan | null
  /** What was mended or left out, or why there is no plan to show, in words. */
  readonly repairs: readonly string[]
}

const nothingYet: PlanState = { plan: null, repairs: [] }

/**
 * The plan a document holds, mended where need be. Reads of one document share their unchanged branches by `===`, and
 * after a small change cost little; `previous` does the same for a plan that came from elsewhere.
 */
export function readPlanFromDocument(doc: Y.Doc, previous?: Plan): PlanState {
  const state = readerOf(doc).read()
  return previous && state.plan ? { ...state, plan: shareStructure(previous, state.plan) } : state
}

/**
 * Calls the listener after each transaction that touched the plan, with the plan as it is now and the transaction's
 * origin, until the returned function is called.
 */
export function watchPlan(doc: Y.Doc, listener: (state: PlanState, origin: unknown) => void): () => void {
  const root = planRoot(doc)
  const observer = (_events: unknown, transaction: Y.Transaction) => listener(readerOf(doc).read(), transaction.origin)
  root.observeDeep(observer)
  return () => root.unobserveDeep(observer)
}

class DocumentReader {
  private readonly snapshot: DocumentSnapshot
  private readonly salvage = new PlanSalvage()
  private last: { readonly from: object; readonly state: PlanState } | null = null

  constructor(doc: Y.Doc) {
    this.snapshot = new DocumentSnapshot(doc)
  }

  read(): PlanState {
    const raw = this.snapshot.read()
    if (this.last?.from !== raw) this.last = { from: raw, state: this.stateOf(raw) }
    return this.last.state
  }

  private stateOf(raw: Readonly<Record<string, unknown>>): PlanState {
    if (Object.keys(raw).length === 0) return nothingYet
    const version = raw['schemaVersion']
    // A version that cannot be read at all is one more leaf to mend; a known other one has its own way.
    if (version === SCHEMA_VERSION || typeof version !== 'number') return this.salvage.read(raw)
    const current = migrate(raw)
    return current.ok ? this.salvage.read(current.plan) : { plan: null, repairs: [current.message] }
  }
}

const readers = new WeakMap<Y.Doc, DocumentReader>()

function readerOf(doc: Y.Doc): DocumentReader {
  const known = readers.get(doc)
  if (known) return known
  const reader = new DocumentReader(doc)
  readers.set(doc, reader)
  return reader
}
