import type * as Y from 'yjs'
import type { NotesWrite } from '../notes/decide.ts'
import { ENTRY_KINDS } from '../notes/entries.ts'
import { readNotes, type NotesReading } from '../notes/notes.ts'

/**
 * How notes lie in a shared document: one map a kind, whose entries are leaves set whole. The relay alone writes, so
 * nothing has to merge within an entry.
 */
export function readNotesFromDocument(doc: Y.Doc): NotesReading {
  return readNotes(Object.fromEntries(ENTRY_KINDS.map((kind) => [kind, Object.fromEntries(doc.getMap(kind).entries())])))
}

/** Puts entries in their places, in one transaction. For the relay. */
export function writeNotesToDocument(doc: Y.Doc, writes: readonly NotesWrite[]): void {
  doc.transact(() => writes.forEach(({ kind, id, entry }) => doc.getMap(kind).set(id, entry)))
}

/** Calls the listener after each transaction that touched the notes, until the returned function is called. */
export function watchNotes(doc: Y.Doc, listener: () => void): () => void {
  const onTransaction = (transaction: Y.Transaction) => transaction.changed.size > 0 && listener()
  doc.on('afterTransaction', onTransaction)
  return () => doc.off('afterTransaction', onTransaction)
}
