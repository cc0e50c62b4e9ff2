import { IndexeddbPersistence } from 'y-indexeddb'
import { WebsocketProvider } from 'y-websocket'
import * as Y from 'yjs'
import { readNotesFromDocument, watchNotes } from '../../../shared-core/document/notesDocument.ts'
import { readLocalCopy } from '../../connection/localCopy.ts'
import type { NotesSource } from './notesStore.ts'

export interface NotesDocument extends NotesSource {
  /** Calls whenever the relay has been reached, the first time and each time again. */
  onReached(listener: () => void): () => void
  close(): void
}

/** The notes of a seat's job as the relay writes them, with a copy on this device to read without a network. Nothing is ever written into it here. */
export function joinNotes(seatId: string): NotesDocument {
  const doc = new Y.Doc()
  const listeners = new Set<() => void>()
  const reached = new Set<() => void>()
  let isHere = false
  let isClosed = false
  const provider = new WebsocketProvider(`${location.origin.replace(/^http/, 'ws')}/s/${seatId}`, 'notes', doc, { disableBc: true, connect: false })
  // Who is here is told in the plan's own connection.
  provider.awareness.setLocalState(null)
  provider.on('sync', (isSynced) => {
    if (!isSynced) return
    arrived()
    reached.forEach((listener) => listener())
  })
  const stopWatching = watchNotes(doc, tell)
  // The relay comes after the copy here: what is read into a joined document would be sent, and refused.
  void readLocalCopy(new IndexeddbPersistence(`halfstop/${seatId}/notes`, doc)).then(() => {
    arrived()
    if (!isClosed) provider.connect()
  })

  function arrived(): void {
    if (isHere) return
    // A local copy of nothing at all was never filled: then only the relay knows whether there are notes.
    isHere = provider.synced || doc.store.clients.size > 0
    if (isHere) tell()
  }

  function tell(): void {
    listeners.forEach((listener) => listener())
  }

  function reconnect(): void {
    if (provider.shouldConnect) provider.connect()
  }
  addEventListener('online', reconnect)

  return {
    read: () => readNotesFromDocument(doc).notes,
    isHere: () => isHere,
    onChange(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    onReached(listener) {
      reached.add(listener)
      return () => reached.delete(listener)
    },
    close() {
      isClosed = true
      removeEventListener('online', reconnect)
      stopWatching()
      provider.destroy()
      provider.awareness.destroy()
      doc.destroy()
    },
  }
}
