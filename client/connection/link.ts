import { readAuthMessage } from 'y-protocols/auth'
import { messageAuth, WebsocketProvider } from 'y-websocket'
import type { Awareness } from 'y-protocols/awareness'
import * as Y from 'yjs'
import { generationOf, keepGeneration, markUnsent, openLocalCopy, readLocalCopy } from './localCopy.ts'
import { afterEvent, connectionAtStart, type Connection, type ConnectionEvent } from './machine.ts'
import { meaningOf, readRefusal, type Refusal } from './refusal.ts'
import { holdsUnsent } from './unsent.ts'

/** The shared document of the moment, and who is in it. After a refused edit there is a new one. */
export interface SharedDocument {
  readonly doc: Y.Doc
  readonly awareness: Awareness
}

export interface LinkListener {
  readonly onConnection: (connection: Connection) => void
  /** A fresh document took the place of the one before; it is still empty. */
  readonly onDocument: (shared: SharedDocument) => void
  /** The relay did not take something. */
  readonly onRefusal: (refusal: Refusal) => void
  /** The relay's copy is here in place of `lost`, which held changes it will never take; `lost` goes when this returns. */
  readonly onLost: (refusal: Refusal, lost: Y.Doc) => void
}

export interface Link {
  readonly shared: () => SharedDocument
  readonly connection: () => Connection
  /** Passes on the relay's word on whether it can keep edits. */
  readonly showKept: (notKept: string | null) => void
  /** Drops what is here for what the relay holds, because of what it refused or would refuse. */
  readonly startOver: (refusal: Refusal) => void
  readonly close: () => void
}

/** Joins the plan of a seat's job and stays joined: a local copy, the relay, and the machine that says how things stand. */
export function openLink(seatId: string, listener: LinkListener): Link {
  let connection = connectionAtStart
  let generation = generationOf(seatId)
  let joined = join()
  let leaving: { readonly lost: typeof joined; readonly refusal: Refusal } | null = null
  void readLocalCopy(joined.localCopy).then((keptHere) => tell({ ...connection, keptHere }))

  function join() {
    const doc = new Y.Doc()
    const localCopy = openLocalCopy(seatId, generation, doc)
    // Tabs do not talk among themselves: what one seat may not do must not reach another past the relay.
    const provider = new WebsocketProvider(`${location.origin.replace(/^http/, 'ws')}/s/${seatId}`, 'plan', doc, { disableBc: true })
    provider.on('status', ({ status }) => status === 'connected' && hear('socket-opened'))
    provider.on('sync', (synced) => synced && hearSynced())
    provider.on('connection-close', () => hear('socket-lost'))
    provider.on('closed', ({ reason }) => hear('turned-away', reason === '' ? null : reason))
    provider.messageHandlers[messageAuth] = (_encoder, decoder) =>
      readAuthMessage(decoder, doc, (_doc, text) => hearRefusal(readRefusal(text)))
    return { doc, localCopy, provider, awareness: provider.awareness }
  }

  function tell(next: Connection): void {
    connection = next
    listener.onConnection(connection)
  }

  function hear(event: ConnectionEvent, reason: string | null = null): void {
    tell(afterEvent(connection, event, reason))
  }

  function hearSynced(): void {
    settle()
    hear('synced')
  }

  /** The relay's copy is here: what was left for it can go. */
  function settle(): void {
    if (leaving === null) return
    const { lost, refusal } = leaving
    leaving = null
    keepGeneration(seatId, generation)
    markUnsent(seatId, false)
    if (holdsUnsent(lost.doc, joined.doc)) listener.onLost(refusal, lost.doc)
    void lost.localCopy.clearData()
    lost.doc.destroy()
  }

  function hearRefusal(refusal: Refusal): void {
    listener.onRefusal(refusal)
    const meaning = meaningOf(refusal)
    if (meaning === 'start-over') startOver(refusal)
    if (meaning === 'keep-waiting') showKept(refusal.words)
  }

  function startOver(refusal: Refusal): void {
    const dropped = joined
    dropped.provider.destroy()
    dropped.awareness.destroy()
    // Of several in a row, the first is the one with something to lose.
    leaving ??= { lost: dropped, refusal }
    if (leaving.lost !== dropped) {
      void dropped.localCopy.clearData()
      dropped.doc.destroy()
    }
    generation += 1
    hear('edit-refused')
    joined = join()
    listener.onDocument(joined)
  }

  function showKept(notKept: string | null): void {
    if (connection.notKept !== notKept) tell({ ...connection, notKept })
  }

  function onNetworkGone(): void {
    hear('network-gone')
    // The socket of a network that is gone may look open for long; a fresh try tells, and a relay on this machine answers it.
    joined.provider.disconnect()
    joined.provider.connect()
  }

  function onNetworkBack(): void {
    hear('network-back')
    // At once, and not when the provider's growing pauses come round to it.
    if (connection.state === 'waiting') joined.provider.connect()
  }

  addEventListener('offline', onNetworkGone)
  addEventListener('online', onNetworkBack)
  if (!navigator.onLine) hear('network-gone')

  return {
    shared: () => joined,
    connection: () => connection,
    showKept,
    startOver,
    close: () => {
      removeEventListener('offline', onNetworkGone)
      removeEventListener('online', onNetworkBack)
      hear('leave')
      joined.provider.destroy()
      joined.awareness.destroy()
      joined.doc.destroy()
      leaving?.lost.doc.destroy()
    },
  }
}
