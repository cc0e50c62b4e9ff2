import * as Y from 'yjs'
import { jsonFromShared } from './branches.ts'
import { planRoot } from './planRoot.ts'

type Group = { readonly [key: string]: unknown }

/**
 * The JSON of the plan's map, kept between reads: only maps that changed since, and those above them, are read again,
 * and all others come back as the same objects.
 */
export class DocumentSnapshot {
  private readonly kept = new WeakMap<Y.Map<unknown>, Group>()

  constructor(private readonly doc: Y.Doc) {
    // Before any observer runs, so that whoever reads from one reads the present.
    doc.on('beforeObserverCalls', (transaction) => this.forgetChanged(transaction))
  }

  read(): Group {
    // A read in the middle of a transaction, or from an observer that started another, comes before their events.
    for (const pending of this.doc._transactionCleanups) this.forgetChanged(pending)
    return this.group(planRoot(this.doc))
  }

  private group(map: Y.Map<unknown>, depth = 0): Group {
    const kept = this.kept.get(map)
    if (kept) return kept
    const entries: [string, unknown][] = []
    for (const [key, value] of map.entries()) {
      const json = value instanceof Y.Map ? (depth < 8 ? this.group(value, depth + 1) : undefined) : jsonFromShared(value)
      if (json !== undefined) entries.push([key, json])
    }
    const group = Object.fromEntries(entries)
    this.kept.set(map, group)
    return group
  }

  private forgetChanged(transaction: Y.Transaction): void {
    for (const changed of transaction.changed.keys()) {
      for (let type: unknown = changed; type instanceof Y.AbstractType; type = type.parent) {
        this.kept.delete(type as Y.Map<unknown>)
      }
    }
  }
}
