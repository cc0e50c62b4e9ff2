import type * as Y from 'yjs'
import { readRigEntry, RIG_ENTRIES_MOST, RIG_KINDS, rigKeyText, type Rig, type RigEdit, type RigKind } from '../rig/rig.ts'
import type { Origin } from './origin.ts'

export interface RigReader {
  /** What the document holds now. Kinds and entries that did not change keep their identity from one call to the next. */
  read(): Rig
}

/**
 * How the rig lies in a shared document: one map a kind, whose entries are leaves set whole. What cannot be read is left
 * out and stays in the document: a later version may have written it.
 */
export function createRigReader(doc: Y.Doc): RigReader {
  const read = new WeakMap<object, unknown>()
  let last: Rig | null = null

  function entriesOf(kind: RigKind): Readonly<Record<string, unknown>> {
    const entries: [string, unknown][] = []
    for (const [key, value] of doc.getMap(kind).entries()) {
      if (entries.length >= RIG_ENTRIES_MOST) break
      if (typeof value !== 'object' || value === null || !rigKeyText.safeParse(key).success) continue
      if (!read.has(value)) read.set(value, readRigEntry(kind, value))
      const entry = read.get(value)
      if (entry !== null) entries.push([key, entry])
    }
    const now = Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)))
    const before = last?.[kind] as Readonly<Record<string, unknown>> | undefined
    return before !== undefined && hasSameEntries(before, now) ? before : now
  }

  return {
    read() {
      const now = Object.fromEntries(RIG_KINDS.map((kind) => [kind, entriesOf(kind)])) as unknown as Rig
      if (last !== null && hasSameEntries(last, now)) return last
      return (last = now)
    },
  }
}

/** Writes all edits in one transaction. */
export function applyRigEdits(doc: Y.Doc, edits: readonly RigEdit[], origin: Origin): void {
  doc.transact(() => {
    for (const { kind, key, entry } of edits) {
      rigKeyText.parse(key)
      if (entry === null) doc.getMap(kind).delete(key)
      else doc.getMap(kind).set(key, entry)
    }
  }, origin)
}

function hasSameEntries(one: Readonly<Record<string, unknown>>, other: Readonly<Record<string, unknown>>): boolean {
  const keys = Object.keys(other)
  return Object.keys(one).length === keys.length && keys.every((key) => one[key] === other[key])
}
