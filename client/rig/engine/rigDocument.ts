import { IndexeddbPersistence } from 'y-indexeddb'
import { readAuthMessage } from 'y-protocols/auth'
import { messageAuth, WebsocketProvider } from 'y-websocket'
import * as Y from 'yjs'
import { applyRigEdits, createRigReader } from '../../../shared-core/document/rigDocument.ts'
import type { Rig, RigEdit } from '../../../shared-core/rig/rig.ts'
import { readLocalCopy } from '../../connection/localCopy.ts'
import { meaningOf, readRefusal } from '../../connection/refusal.ts'

export interface RigDocument {
  read(): Rig
  /** Whether what there is has been read: the copy on this device, or the relay's. */
  isHere(): boolean
  write(edits: readonly RigEdit[]): void
  onChange(listener: () => void): () => void
  close(): void
}

/**
 * The rig document of a seat's job, with a copy on this device: a stand is ticked in a basement and merges later.
 * `say` is told in words what the relay did not take; the copy here then goes back to the relay's.
 */
export function joinRig(seatId: string, say: (words: string) => void): RigDocument {
  const listeners = new Set<() => void>()
  let isClosed = false
  let isHere = false
  let joined = join()

  function join() {
    const doc = new Y.Doc()
    const reader = createRigReader(doc)
    const localCopy = new IndexeddbPersistence(`halfstop/${seatId}/rig`, doc)
    const provider = new WebsocketProvider(`${location.origin.replace(/^http/, 'ws')}/s/${seatId}`, 'rig', doc, { disableBc: true })
    // Who is here is told in the plan's own connection.
    provider.awareness.setLocalState(null)
    provider.on('sync', (isSynced) => isSynced && arrived())
    provider.messageHandlers[messageAuth] = (_encoder, decoder) =>
      readAuthMessage(decoder, doc, (_doc, text) => hearRefusal(text))
    doc.on('afterTransaction', ({ changed }: Y.Transaction) => changed.size > 0 && tell())
    void readLocalCopy(localCopy).then(arrived)
    return { doc, reader, localCopy, provider }
  }

  function leave(): void {
    joined.provider.destroy()
    joined.provider.awareness.destroy()
    joined.doc.destroy()
  }

  function hearRefusal(text: string): void {
    const refusal = readRefusal(text)
    say(`Not taken. ${refusal.words}`)
    if (meaningOf(refusal) === 'start-over') void startOver()
  }

  async function startOver(): Promise<void> {
    const { localCopy } = joined
    leave()
    await localCopy.clearData()
    if (!isClosed) joined = join()
  }

  function arrived(): void {
    isHere = true
    tell()
  }

  function tell(): void {
    if (!isClosed) listeners.forEach((listener) => listener())
  }

  function reconnect(): void {
    if (joined.provider.shouldConnect) joined.provider.connect()
  }
  addEventListener('online', reconnect)

  return {
    read: () => joined.reader.read(),
    isHere: () => isHere,
    write: (edits) => applyRigEdits(joined.doc, edits, { by: 'person', seatId }),
    onChange(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    close() {
      isClosed = true
      removeEventListener('online', reconnect)
      leave()
    },
  }
}
