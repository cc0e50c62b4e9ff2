import { readAuthMessage } from 'y-protocols/auth'
import { IndexeddbPersistence } from 'y-indexeddb'
import { messageAuth, WebsocketProvider } from 'y-websocket'
import type { Awareness } from 'y-protocols/awareness'
import * as Y from 'yjs'
import { afterEvent, connectionAtStart, type Connection, type ConnectionEvent } from './machine.ts'
import { meaningOf, readRefusal, type Refusal } from './refusal.ts'

/** The shared document of the moment, and who is in it. After a refused edit there is a new one. */
export interface SharedDocument {
  readonly doc: Y.Doc
  readonly awareness: Awareness
}

export interface LinkListener {
  readonly onConnection: (connection: Connection) => void
  /** A fresh document took the place of the one before; it is still empty. */
  readonly onDocument: (shared: SharedDocument) => void
  /** The relay refused something; `lost` is the document whose changes it did not take, before it is dropped. */
  readonly onRefusal: (refusal: Refusal, lost: Y.Doc | null) => void
}

export interface Link {
  readonly shared: () => SharedDocument
  readonly connection: () => Connection
  /** The relay's word on whether it can keep edits. */
  readonly showKept: (notKept: string | null) => void
  /** Resolves when the copy of this device has been read, or cannot be. */
  readonly localCopyRead: Promise<void>
  readonly close: () => void
}

/**
 * Joins the plan of a seat's job and stays joined: a local copy, the relay, and the machine that says how things stand.
 * The local copy belongs to the seat and not to the job, so that a copy dropped for a refused edit never takes along
 * what another seat of this browser still has to send.
 */
export function openLink(seatId: string, listener: LinkListener): Link {
  let connection = connectionAtStart
  let joined = join()

  function join() {
    const doc = new Y.Doc()
    const localCopy = new IndexeddbPersistence(localCopyName(seatId), doc)
    // Tabs do not talk among themselves: what one seat may not do must not reach another past the relay.
    const provider = new WebsocketProvider(`${location.origin.replace(/^http/, 'ws')}/s/${seatId}`, 'plan', doc, { disableBc: true })
    provider.on('status', ({ status }) => status === 'connected' && hear('socket-opened'))
    provider.on('sync', (synced) => synced && hear('synced'))
    provider.on('connection-close', () => hear('socket-lost'))
    provider.on('closed', ({ reason }) => hear('turned-away', reason === '' ? null : reason))
    provider.messageHandlers[messageAuth] = (_encoder, decoder) =>
      readAuthMessage(decoder, doc, (_doc, text) => hearRefusal(readRefusal(text)))
    return { doc, localCopy, provider, awareness: provider.awareness }
  }

  function hear(event: ConnectionEvent, reason: string | null = null): void {
    connection = afterEvent(connection, event, reason)
    listener.onConnection(connection)
  }

  function hearRefusal(refusal: Refusal): void {
    switch (meaningOf(refusal)) {
      case 'start-over':
        return startOver(refusal)
      case 'keep-waiting':
        showKept(refusal.words)
        return listener.onRefusal(refusal, null)
      case 'only-words':
        return listener.onRefusal(refusal, null)
    }
  }

  function startOver(refusal: Refusal): void {
    const lost = joined
    hear('edit-refused')
    listener.onRefusal(refusal, lost.doc)
    lost.provider.destroy()
    lost.awareness.destroy()
    void lost.localCopy.clearData()
    lost.doc.destroy()
    joined = join()
    listener.onDocument(joined)
  }

  function showKept(notKept: string | null): void {
    if (connection.notKept === notKept) return
    connection = { ...connection, notKept }
    listener.onConnection(connection)
  }

  function onNetworkGone(): void {
    hear('network-gone')
    // The socket of a network that is gone may look open for long; a fresh try tells, and a relay on this machine answers it.
    joined.provider.disconnect()
    joined.provider.connect()
  }

  const onNetworkBack = () => hear('network-back')
  addEventListener('offline', onNetworkGone)
  addEventListener('online', onNetworkBack)

  return {
    shared: () => joined,
    connection: () => connection,
    showKept,
    localCopyRead: readLocalCopy(joined.localCopy).then((keptHere) => {
      connection = { ...connection, keptHere }
      listener.onConnection(connection)
    }),
    close: () => {
      removeEventListener('offline', onNetworkGone)
      removeEventListener('online', onNetworkBack)
      hear('leave')
      joined.provider.destroy()
      joined.awareness.destroy()
      joined.doc.destroy()
    },
  }
}

/** Whether this browser keeps a copy; some keep none in private windows, and say so only by an error or by silence. */
function readLocalCopy(localCopy: IndexeddbPersistence): Promise<boolean> {
  const patienceMs = 4_000
  return Promise.race([
    localCopy._db.then(() => localCopy.whenSynced).then(() => true, () => false),
    new Promise<boolean>((resolve) => setTimeout(() => resolve(false), patienceMs)),
  ])
}

export function localCopyName(seatId: string): string {
  return `halfstop/${seatId}/plan`
}
