import { randomInt } from 'node:crypto'
import * as decoding from 'lib0/decoding'
import * as Y from 'yjs'
import { upgradeDocument } from '../../shared-core/document/upgradeDocument.ts'
import type { DocumentKey, DocumentLog } from '../store/store.ts'
import { isPlainUpdate } from './plainUpdate.ts'
import { merged } from './updates.ts'

/** A document of so many bytes is built in about a millisecond. */
const LONGEST_AT_REST_BYTES = 16_000
/** One whose log is longer than this is not even put together to see how long it is. */
const LONGEST_LOG_AT_REST_BYTES = 128_000

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
  /** Null while it is held as updates alone. */
  #built: Y.Doc | null = null
  #unbuilt: readonly Uint8Array[] = []
  /** Under which the relay's own changes are written; another one after every reading, as what was last written may be kept after all. */
  #clientId = newClientId()
  /** All that is kept as one update, where it is held or was read as such and nothing came since. */
  #asKept: Uint8Array | null = null
  #news: Uint8Array[] = []
  #lastSequence = 0
  #bytes = 0
  #updatesInLog = 0
  #isBehind = false
  #isStale = true
  #isLoaded = false

  /** The same function each time, to be taken off again. */
  readonly #noted = this.#noteNews.bind(this)

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
      if (this.#news.length > 0) this.#asKept = null
    } catch {
      // Whoever may write may have written anything: what no step can lead up is for the pages to mend or refuse.
      await this.reload()
      return null
    }
    return this.#takeNews()
  }

  /** Size of the log. After {@link compact} that is the size of the document. */
  get bytes(): number {
    return this.#bytes
  }

  get updatesInLog(): number {
    return this.#updatesInLog
  }

  /** Sequence up to which all that is kept is here. */
  get lastSequence(): number {
    return this.#lastSequence
  }

  /** Whether another relay is known to have kept something that is not here: see {@link readOn}. */
  get isBehind(): boolean {
    return this.#isBehind
  }

  /** Whether it holds something that is not kept, since it could not be reloaded yet. Nobody may see it then. */
  get isStale(): boolean {
    return this.#isStale
  }

  /** False while it is held as updates alone: as it was read, or at rest. */
  get isBuilt(): boolean {
    return this.#built !== null
  }

  /**
   * Holds it as updates until it is needed: a document in memory takes many times as much. Only a short one, which is
   * soon built again.
   */
  rest(): void {
    if (this.#built === null || this.#isStale || this.#bytes > LONGEST_LOG_AT_REST_BYTES) return
    const all = Y.encodeStateAsUpdate(this.#built)
    if (all.byteLength > LONGEST_AT_REST_BYTES) return
    this.#hold([all])
    this.#asKept = all
  }

  /**
   * To build a long document takes longer than all else that happens when somebody comes in, so the first of them is
   * answered before.
   */
  get #doc(): Y.Doc {
    return this.#built ?? this.#fill(this.#unbuilt)
  }

  stateVector(): Uint8Array {
    const isAtRest = this.#built === null && this.#asKept !== null && this.#asKept.byteLength <= LONGEST_AT_REST_BYTES
    return isAtRest ? Y.encodeStateVectorFromUpdate(this.#asKept as Uint8Array) : Y.encodeStateVector(this.#doc)
  }

  /** All that someone with that state vector is missing. @throws when the bytes are no state vector. */
  missingFrom(stateVector: Uint8Array): Uint8Array {
    const hasNothing = stateVector.length === 1 && stateVector[0] === 0
    return hasNothing && this.#asKept !== null ? this.#asKept : Y.encodeStateAsUpdate(this.#doc, stateVector)
  }

  /** The document as it is kept, to look at. */
  get content(): Y.Doc {
    return this.#doc
  }

  /** A change of the relay's own. @returns what it changed, applied but not yet kept; null when nothing did. */
  change(make: (doc: Y.Doc) => void): Uint8Array | null {
    const doc = this.#doc
    this.#asKept = null
    this.#news = []
    doc.transact(() => make(doc))
    return this.#takeNews()
  }

  /**
   * @param isLive whether these say what somebody has just done and nothing else, as answers to "what am I missing" do not
   * @throws when an update cannot be integrated; the document must then be reloaded.
   */
  apply(updates: readonly Uint8Array[], isLive = false): Applied {
    const incomplete = new Set<number>()
    const doc = this.#doc
    const asItCame = isLive && updates.length === 1 ? this.#wholeNews(updates[0] as Uint8Array) : null
    this.#asKept = null
    this.#news = []
    // What is new throughout is the news as it is; Yjs would write the same anew.
    if (asItCame !== null) doc.off('update', this.#noted)
    doc.transact(() => {
      updates.forEach((update, index) => {
        Y.applyUpdate(doc, update)
        if (this.#dropUnresolved()) incomplete.add(index)
      })
      if (asItCame === null || incomplete.size > 0) doc.on('update', this.#noted)
    })
    doc.on('update', this.#noted)
    return { news: incomplete.size === 0 && asItCame !== null ? asItCame : this.#takeNews(), incomplete }
  }

  /**
   * Appends news to the log.
   *
   * @param onlyNext whether it must not be kept when another relay has kept something that is not here yet
   * @returns its sequence
   * @throws StoreError when it could not be kept (`conflict` for the latter); the document must then be reloaded.
   */
  async keep(news: Uint8Array, onlyNext = false): Promise<number> {
    const sequence = await (onlyNext ? this.#log.append(this.#key, news, this.#lastSequence) : this.#log.append(this.#key, news))
    this.#bytes += news.byteLength
    this.#updatesInLog += 1
    // What another relay kept in between has yet to be read; until then only what stands before it is whole.
    if (!this.#isBehind && sequence === this.#lastSequence + 1) this.#lastSequence = sequence
    else this.#isBehind = true
    return sequence
  }

  /**
   * Takes in what other relays kept since.
   *
   * @returns what was new in it, merged into one update; null when nothing was.
   * @throws StoreError when the log cannot be read; the document is as it was then.
   */
  async readOn(): Promise<Uint8Array | null> {
    const kept = await this.#log.readDocument(this.#key, this.#lastSequence)
    const doc = this.#doc
    if (kept.updates.length > 0) this.#asKept = null
    this.#news = []
    doc.transact(() => kept.updates.forEach((update) => Y.applyUpdate(doc, update)))
    this.#lastSequence = kept.lastSequence
    this.#isBehind = false
    this.#bytes += kept.updates.reduce((total, update) => total + update.byteLength, 0)
    this.#updatesInLog += kept.updates.length
    return this.#takeNews()
  }

  /**
   * Goes back to exactly what the store holds.
   *
   * @returns what other relays kept since it was last read, merged into one update: it was shown to nobody here yet.
   * @throws StoreError when the log cannot be read; the document is stale then.
   */
  async reload(): Promise<Uint8Array | null> {
    const before = this.#lastSequence
    this.#isStale = true
    const kept = await this.#log.readDocument(this.#key)
    const isNothingMissed = !this.#isLoaded || kept.lastSequence === before
    const missed = isNothingMissed ? null : merged((await this.#log.readDocument(this.#key, before)).updates)
    this.#clientId = newClientId()
    const [only] = kept.updates
    this.#asKept = only !== undefined && kept.updates.length === 1 ? only : null
    // What may not even be an update is looked into before anybody is shown it.
    if (this.#asKept !== null && isPlainUpdate(this.#asKept)) this.#hold(kept.updates)
    else this.#fill(kept.updates)
    this.#lastSequence = kept.lastSequence
    this.#bytes = kept.updates.reduce((total, update) => total + update.byteLength, 0)
    this.#updatesInLog = kept.updates.length
    this.#isBehind = false
    this.#isStale = false
    this.#isLoaded = true
    return missed
  }

  /** Folds the log into one update. @throws StoreError; nothing is lost then. */
  async compact(): Promise<void> {
    if (this.#updatesInLog < 2 || this.#isBehind || this.#isStale) return
    const snapshot = this.#asKept ?? Y.encodeStateAsUpdate(this.#doc)
    await this.#log.compact(this.#key, snapshot, this.#lastSequence)
    this.#bytes = snapshot.byteLength
    this.#updatesInLog = 1
  }

  destroy(): void {
    this.#built?.destroy()
  }

  #hold(updates: readonly Uint8Array[]): void {
    this.#built?.destroy()
    this.#built = null
    this.#unbuilt = updates
  }

  #fill(updates: readonly Uint8Array[]): Y.Doc {
    const doc = new Y.Doc()
    doc.transact(() => updates.forEach((update) => Y.applyUpdate(doc, update)))
    // Not before: Yjs takes another one where somebody else seems to have it.
    doc.clientID = this.#clientId
    doc.on('update', this.#noted)
    this.#built?.destroy()
    this.#built = doc
    this.#unbuilt = []
    return doc
  }

  /** What was noted since it was last forgotten, merged into one update; null when nothing. */
  #takeNews(): Uint8Array | null {
    const news = this.#news
    this.#news = []
    return merged(news)
  }

  #noteNews(update: Uint8Array): void {
    this.#news.push(update)
  }

  /** The update when it is one client's alone and nothing of it was here before; null for any other. */
  #wholeNews(update: Uint8Array): Uint8Array | null {
    const decoder = decoding.createDecoder(update)
    const clients = decoding.readVarUint(decoder)
    if (clients !== 1 || decoding.readVarUint(decoder) === 0) return null
    const client = decoding.readVarUint(decoder)
    const clock = decoding.readVarUint(decoder)
    return clock >= Y.getState(this.#doc.store, client) ? update : null
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

function newClientId(): number {
  return randomInt(2 ** 32)
}
