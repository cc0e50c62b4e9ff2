import * as Y from 'yjs'
import { upgradeDocument } from '../../shared-core/document/upgradeDocument.ts'
import type { DocumentKey, DocumentLog } from '../store/store.ts'

/** What came of applying some updates. */
export interface Applied {
  /** All that was new in them, merged into one update; null when nothing was. */
  readonly news: Uint8Array | null
  /** Which of the updates (by index) rest on something that never arrived. Of those nothing unresolved stays behind. */
  readonly incomplete: ReadonlySet<number>
}

/**
 * One document in memory together with its log in the store. Whoever uses it does one thing at a time: apply, keep,
 * then show; between apply and the end of keep nobody may see the document.
 */
export class SharedDocument {
  readonly #key: DocumentKey
  readonly #log: DocumentLog
  #doc = new Y.Doc()
  #news: Uint8Array[] = []
  #lastSequence = 0
  #bytes = 0
  #updatesInLog = 0

  private constructor(key: DocumentKey, log: DocumentLog) {
    this.#key = key
    this.#log = log
  }

  /** @throws StoreError when the log cannot be read; Error when what it holds is no document. */
  static async load(key: DocumentKey, log: DocumentLog): Promise<SharedDocument> {
    const document = new SharedDocument(key, log)
    await document.reload()
    return document
  }

  /**
   * Brings a plan of an older version up to today's, since pages write edits in today's shape.
   *
   * @returns what that changed, applied but not yet kept; null when nothing did. A newer plan, or what is none, is left
   * as it is: the pages say so.
   */
  async bringUp(): Promise<Uint8Array | null> {
    this.#news = []
    try {
      upgradeDocument(this.#doc)
    } catch {
      // Whoever may write may have written anything: what no step can lead up is for the pages to mend or refuse.
      await this.reload()
      return null
    }
    return this.#news.length > 1 ? Y.mergeUpdates(this.#news) : (this.#news[0] ?? null)
  }

  /** Size of the log. After {@link compact} that is the size of the document. */
  get bytes(): number {
    return this.#bytes
  }

  get updatesInLog(): number {
    return this.#updatesInLog
  }

  stateVector(): Uint8Array {
    return Y.encodeStateVector(this.#doc)
  }

  /** All that someone with that state vector is missing. @throws when the bytes are no state vector. */
  missingFrom(stateVector: Uint8Array): Uint8Array {
    return Y.encodeStateAsUpdate(this.#doc, stateVector)
  }

  /** The document as it is kept, to look at. */
  get content(): Y.Doc {
    return this.#doc
  }

  /** A change of the relay's own. @returns what it changed, applied but not yet kept; null when nothing did. */
  change(make: (doc: Y.Doc) => void): Uint8Array | null {
    this.#news = []
    this.#doc.transact(() => make(this.#doc))
    return this.#news.length > 1 ? Y.mergeUpdates(this.#news) : (this.#news[0] ?? null)
  }

  /** @throws when an update cannot be integrated; the document must then be reloaded. */
  apply(updates: readonly Uint8Array[]): Applied {
    const incomplete = new Set<number>()
    this.#news = []
    this.#doc.transact(() => {
      updates.forEach((update, index) => {
        Y.applyUpdate(this.#doc, update)
        if (this.#dropUnresolved()) incomplete.add(index)
      })
    })
    const news = this.#news.length > 1 ? Y.mergeUpdates(this.#news) : (this.#news[0] ?? null)
    return { news, incomplete }
  }

  /** Appends news to the log. @throws StoreError when it could not be kept; the document must then be reloaded. */
  async keep(news: Uint8Array): Promise<void> {
    this.#lastSequence = await this.#log.append(this.#key, news)
    this.#bytes += news.byteLength
    this.#updatesInLog += 1
  }

  /** Goes back to exactly what the store holds. */
  async reload(): Promise<void> {
    const kept = await this.#log.readDocument(this.#key)
    const doc = new Y.Doc()
    doc.transact(() => kept.updates.forEach((update) => Y.applyUpdate(doc, update)))
    doc.on('update', (update: Uint8Array) => this.#news.push(update))
    this.#doc.destroy()
    this.#doc = doc
    this.#lastSequence = kept.lastSequence
    this.#bytes = kept.updates.reduce((total, update) => total + update.byteLength, 0)
    this.#updatesInLog = kept.updates.length
  }

  /** Folds the log into one update. @throws StoreError; nothing is lost then. */
  async compact(): Promise<void> {
    if (this.#updatesInLog < 2) return
    const snapshot = Y.encodeStateAsUpdate(this.#doc)
    await this.#log.compact(this.#key, snapshot, this.#lastSequence)
    this.#bytes = snapshot.byteLength
    this.#updatesInLog = 1
  }

  destroy(): void {
    this.#doc.destroy()
  }

  /**
   * Yjs sets aside what it cannot place yet. Here that is thrown away, since it is neither kept nor bounded: the sender
   * is asked again and sends it with all that it rests on.
   */
  #dropUnresolved(): boolean {
    const { store } = this.#doc
    if (store.pendingStructs === null && store.pendingDs === null) return false
    store.pendingStructs = null
    store.pendingDs = null
    return true
  }
}

/** Whether the bytes decode as an update throughout. Costs no more than their length, whatever they claim to hold. */
export function isUpdate(bytes: Uint8Array): boolean {
  try {
    Y.decodeUpdate(bytes)
    return true
  } catch {
    return false
  }
}

/** Whether it is the update that says nothing: no client, no deletion. Every join sends one. */
export function isEmptyUpdate(update: Uint8Array): boolean {
  return update.length === 2 && update[0] === 0 && update[1] === 0
}
