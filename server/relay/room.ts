import { penKept } from '../access/penKept.ts'
import { mayWrite, type Pen } from '../access/seat.ts'
import type { PresenceEntry } from '../neighbours/news.ts'
import type { DocumentKey } from '../store/store.ts'
import { asStoreError, StoreError } from '../store/storeError.ts'
import { answer, askForMissing, noteCompleteness } from './catchingUp.ts'
import type { CloseCause } from './closeCodes.ts'
import type { Connection } from './connection.ts'
import { Company } from './company.ts'
import { bringUp, fold, goBack, isFull, readOn } from './documentCare.ts'
import { readFrame } from './frames.ts'
import { mergeWindowMs } from './limits.ts'
import { serveOwnWrite, type DecideWrite, type OwnWrite } from './ownWrite.ts'
import { QuietTime } from './quietTime.ts'
import type { Refusal } from './refusals.ts'
import type { RoomHouse } from './roomHouse.ts'
import { SharedDocument } from './sharedDocument.ts'
import { entriesOf, newsOf } from './relayedPresence.ts'
import { Throttle } from './throttle.ts'
import { isEmptyUpdate } from './updates.ts'
import { refuseAll, rejectOwn, sift, wantsReading, type Change, type Work } from './work.ts'

/** Where nobody ever stops, the log grows to so many times its length and is folded all the same. */
const FOLDED_WITHOUT_PAUSE = 10

/**
 * The people on one document. For whatever arrives the order is: read its kind, ask the role, apply, append to the
 * store, pass on. All that arrives within one turn of the event loop (or one merge window, when busy) is applied
 * together and goes out as the same bytes to everybody, the senders too: to them it says "kept".
 */
export class Room {
  readonly key: DocumentKey
  readonly #house: RoomHouse
  readonly #company: Company
  readonly #work: Throttle
  readonly #quiet: QuietTime
  readonly #stopHearingHealth: () => void
  #document: SharedDocument | null = null
  #pen: Pen | undefined
  #inbox: Work[] = []
  #inHand: Work[] = []
  #idleTimer: NodeJS.Timeout | undefined
  #isClosed = false

  constructor(key: DocumentKey, house: RoomHouse) {
    this.key = key
    this.#house = house
    this.#company = new Company(house.limits, house.tally, (entries) => house.neighbours?.presence(key, newsOf(entries)))
    this.#work = new Throttle(() => mergeWindowMs(house.limits, this.#company.size), () => this.#serveInbox())
    this.#quiet = new QuietTime(() => {
      this.#inbox.push({ kind: 'rest' })
      this.#work.ask()
    })
    this.#stopHearingHealth = house.health.onChange(() => this.#healthChanged())
    this.tellRelays()
    this.#work.ask()
  }

  get people(): number {
    return this.#company.size
  }

  enter(connection: Connection): void {
    clearTimeout(this.#idleTimer)
    this.#company.enter(connection)
  }

  leave(connection: Connection): void {
    if (this.#isClosed) return
    this.#company.leave(connection)
    if (this.#company.size === 0) this.#closeWhenIdle()
  }

  /** Takes one message as it came. Never throws, whatever the bytes. */
  hear(connection: Connection, bytes: Uint8Array): void {
    if (this.#isClosed || !connection.isOpen) return
    const frame = readFrame(bytes)
    if (frame === null) return connection.close('badFrame')
    switch (frame.kind) {
      case 'askPresence': return this.#company.tellEverything(connection)
      case 'presence': return this.#company.hear(connection, frame.awarenessUpdate)
      case 'change':
        if (isEmptyUpdate(frame.update)) return
        this.#inbox.push({ kind: 'change', connection, update: frame.update, isAnswer: frame.isAnswer })
        return this.#work.ask()
      case 'ask':
        this.#inbox.push({ kind: 'ask', connection, stateVector: frame.stateVector })
        return this.#work.askNow()
    }
  }

  /** Writes something of the relay's own, in its turn. Rejects with a StoreError when it cannot be kept. */
  write(decide: DecideWrite): Promise<void> {
    return new Promise((resolve, reject) => {
      if (this.#isClosed) return reject(new StoreError('closed', 'the room was closed'))
      this.#inbox.push({ kind: 'own', decide, resolve, reject })
      this.#work.askNow()
      if (this.#company.size === 0) this.#closeWhenIdle()
    })
  }

  /** The pen went to somebody else: they are asked for what they could not send before. */
  penMoved(pen: Pen): void {
    if (this.#pen?.seatId === pen?.seatId && this.#pen?.name === pen?.name && this.#pen !== undefined) return
    this.#pen = pen
    this.sayAsRelay()
    for (const connection of this.#company.connections) {
      if (connection.seat.seatId === pen?.seatId) this.#inbox.push({ kind: 'catchUp', connection })
    }
    this.#work.askNow()
  }

  renamed(connection: Connection): void {
    this.#company.renamed(connection)
  }

  /** Tells other relays that people are on this document here. */
  tellRelays(): void {
    this.#house.neighbours?.opened(this.key)
  }

  /** People are on this document on another relay too, which is told of everybody here and may have kept something. */
  shared(): void {
    this.#company.introduceAll()
    this.readOn(Infinity)
  }

  /** Another relay may have kept updates up to that sequence. */
  readOn(sequence: number): void {
    if (this.#isClosed) return
    this.#inbox.push({ kind: 'readOn', sequence })
    this.#work.ask()
  }

  presenceHeard(relayId: string, entries: readonly PresenceEntry[]): void {
    this.#company.hearElsewhere(relayId, entriesOf(entries))
  }

  /** The people on that relay are gone; what it kept last may not have been told any more. */
  relayLost(relayId: string): void {
    this.#company.forgetElsewhere(relayId)
    this.readOn(Infinity)
  }

  /** Tells all clients who holds the pen and whether edits are kept; said again now and then lest it go stale. */
  sayAsRelay(): void {
    if (this.#pen === undefined) return
    this.#company.sayAsRelay({ pen: this.#pen, notKept: this.#house.health.notKept })
  }

  /** Serves what arrived, folds the log, and ends every connection. */
  async stop(): Promise<void> {
    await this.#work.finish()
    await this.#end('stopping')
  }

  async #end(cause: CloseCause): Promise<void> {
    if (this.#isClosed) return
    this.#close(cause)
    await this.#fold()
    this.#document?.destroy()
  }

  async #serveInbox(): Promise<void> {
    try {
      this.#document ??= await this.#open()
      if (this.#document.isStale && this.#house.health.notKept === null) await this.#goBack(this.#document)
      this.#inHand = this.#inbox
      this.#inbox = []
      if (this.#inHand.some(({ kind }) => kind !== 'rest')) this.#quiet.disturb()
      await this.#serve(this.#document, this.#inHand)
      // Not held on to: each lies in all that came over the network with it.
      this.#inHand = []
      if (this.#document.updatesInLog >= FOLDED_WITHOUT_PAUSE * this.#house.limits.compactAfterUpdates) await this.#fold()
    } catch (thrown) {
      const unreadable = thrown instanceof StoreError
      const detail = thrown instanceof Error ? (unreadable ? thrown.message : String(thrown.stack)) : String(thrown)
      this.#house.log.error(unreadable ? 'document cannot be read' : 'room failed', { ...this.key, detail })
      this.#close(unreadable ? 'unreadable' : 'fault')
    }
  }

  async #open(): Promise<SharedDocument> {
    const document = await SharedDocument.load(this.key, this.#house.documents)
    if (this.key.document === 'plan') await bringUp(document, this.#house.health)
    const pen = await penKept(this.#house.store, this.key.jobId)
    // A pen that moved while this was read is the newer news.
    if (this.#pen === undefined) this.#pen = pen
    this.sayAsRelay()
    return document
  }

  /** Back to what is kept, showing what others kept meanwhile. */
  async #goBack(document: SharedDocument): Promise<void> {
    this.#passOn(await goBack(document, this.#house.health))
  }

  /** Another relay kept it: here it only has to be shown. */
  #passOn(news: Uint8Array | null): void {
    if (news !== null) this.#company.passOnEdits(news, 1)
  }

  /** What is kept now others may want to read. */
  #tellKept(document: SharedDocument, sequence: number): void {
    this.#house.neighbours?.rowsKept(this.key, sequence)
    if (document.isBehind) this.readOn(Infinity)
  }

  async #serve(document: SharedDocument, work: readonly Work[]): Promise<void> {
    // Not while the store is out of order: it is done when that is over.
    const mayRead = this.#house.neighbours !== null && !document.isStale && this.#house.health.notKept === null
    if (mayRead && work.some((item) => wantsReading(item, document.lastSequence))) this.#passOn(await readOn(document, this.#house.health))
    const changes = sift(work, (connection) => this.#refusalOf(connection))
    if (changes.length > 0) await this.#take(document, changes)
    for (const item of work) {
      if (item.kind === 'own') await this.#writeOwn(document, item)
      // Nobody is shown a document that holds what is not kept: who asks is answered once that is over.
      if (item.kind === 'ask' && document.isStale) this.#inbox.push(item)
      else if (item.kind === 'ask') answer(document, item.connection, item.stateVector, (connection) => this.#mayWrite(connection))
      if (item.kind === 'rest') await this.#rest(document)
      if (item.kind === 'catchUp' && !document.isStale) this.#catchUp(document, item.connection)
    }
  }

  #refusalOf(connection: Connection): Refusal | null {
    if (this.key.document === 'notes') return 'relay-only'
    if (!mayWrite(connection.seat, this.key.document, this.#pen ?? null)) return 'no-pen'
    return this.#house.health.notKept === null ? null : 'not-kept'
  }

  #mayWrite(connection: Connection): boolean {
    return this.#refusalOf(connection) === null
  }

  #catchUp(document: SharedDocument, connection: Connection | null): void {
    askForMissing(document, connection === null ? this.#company.connections : [connection], (each) => this.#mayWrite(each))
  }

  async #take(document: SharedDocument, changes: readonly Change[]): Promise<void> {
    if (document.bytes > this.#house.limits.documentBytes && await isFull(document, this.key, this.#house)) return refuseAll(changes, 'document-full')
    let applied
    try {
      applied = document.apply(changes.map((change) => change.update), !changes.some((change) => change.isAnswer))
    } catch {
      return this.#takeOneByOne(document, changes)
    }
    changes.forEach((change, index) => noteCompleteness(document, change, applied.incomplete.has(index), (connection) => this.#mayWrite(connection)))
    if (applied.news === null) return
    let sequence
    try {
      sequence = await document.keep(applied.news)
    } catch (thrown) {
      this.#house.health.failed(asStoreError(thrown))
      await this.#goBack(document)
      return refuseAll(changes, 'not-kept')
    }
    this.#company.passOnEdits(applied.news, changes.length)
    this.#tellKept(document, sequence)
  }

  async #writeOwn(document: SharedDocument, write: OwnWrite): Promise<void> {
    if (await isFull(document, this.key, this.#house)) return write.reject(new StoreError('full', 'the document is as large as may be'))
    const news = await serveOwnWrite(document, write, this.#house.health, () => this.#goBack(document))
    if (news === null) return
    this.#company.passOnEdits(news, 1)
    this.#tellKept(document, document.lastSequence)
  }

  /** One of them broke the document: back to what is kept, then each by itself, so that only the culprit is turned out. */
  async #takeOneByOne(document: SharedDocument, changes: readonly Change[]): Promise<void> {
    await this.#goBack(document)
    if (document.isStale) return refuseAll(changes, 'not-kept')
    const [only, ...others] = changes
    if (only !== undefined && others.length === 0) return only.connection.close('badFrame')
    for (const change of changes) await this.#take(document, [change])
  }

  #healthChanged(): void {
    this.sayAsRelay()
    if (this.#house.health.notKept !== null) return
    this.#inbox.push({ kind: 'readOn', sequence: Infinity }, { kind: 'catchUp', connection: null })
    this.#work.askNow()
  }

  async #fold(): Promise<void> {
    if (this.#document !== null) await fold(this.#document, this.key, this.#house.log)
  }

  /** What holds everybody up for some milliseconds, or spares memory, is done while nobody says anything. */
  async #rest(document: SharedDocument): Promise<void> {
    if (document.updatesInLog >= this.#house.limits.compactAfterUpdates) await this.#fold()
    document.rest()
  }

  #closeWhenIdle(): void {
    clearTimeout(this.#idleTimer)
    this.#idleTimer = setTimeout(async () => {
      await this.#work.finish()
      if (this.#company.size > 0) return
      // Something may have come in while the last was served.
      if (this.#inbox.length > 0) this.#closeWhenIdle()
      else await this.#end('stopping')
    }, this.#house.limits.roomIdleMs).unref()
  }

  #close(cause: CloseCause): void {
    if (this.#isClosed) return
    this.#isClosed = true
    clearTimeout(this.#idleTimer)
    this.#quiet.stop()
    this.#work.stop()
    this.#stopHearingHealth()
    this.#house.closed(this)
    this.#house.neighbours?.shut(this.key)
    this.#company.sendOff(cause)
    rejectOwn([...this.#inHand, ...this.#inbox])
  }
}
