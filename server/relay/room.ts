import { penKept } from '../access/penKept.ts'
import { mayWrite, type Pen } from '../access/seat.ts'
import type { PresenceEntry } from '../neighbours/news.ts'
import type { DocumentKey } from '../store/store.ts'
import { StoreError } from '../store/storeError.ts'
import { answer, askForMissing } from './catchingUp.ts'
import type { CloseCause } from './closeCodes.ts'
import type { Connection } from './connection.ts'
import { Company } from './company.ts'
import { bringUp, fold } from './documentCare.ts'
import { readFrame } from './frames.ts'
import { mergeWindowMs } from './limits.ts'
import type { DecideWrite } from './ownWrite.ts'
import { QuietTime } from './quietTime.ts'
import type { Refusal } from './refusals.ts'
import type { RoomHouse } from './roomHouse.ts'
import { SharedDocument } from './sharedDocument.ts'
import { entriesOf, newsOf } from './relayedPresence.ts'
import { Taking } from './taking.ts'
import { Throttle } from './throttle.ts'
import { isEmptyUpdate } from './updates.ts'
import { rejectOwn, sift, wantsReading, type Work } from './work.ts'

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
  readonly #taking: Taking
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
    this.#taking = new Taking(key, house, this.#company, this.#mayWrite.bind(this), this.readOn.bind(this))
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
      if (this.#document.isStale && this.#house.health.notKept === null) await this.#taking.goBack(this.#document)
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

  async #serve(document: SharedDocument, work: readonly Work[]): Promise<void> {
    // Not while the store is out of order: it is done when that is over.
    const mayRead = this.#house.neighbours !== null && !document.isStale && this.#house.health.notKept === null
    if (mayRead && work.some((item) => wantsReading(item, document.lastSequence))) await this.#taking.readOn(document)
    const changes = sift(work, (connection) => this.#refusalOf(connection))
    if (changes.length > 0) await this.#taking.take(document, changes)
    for (const item of work) {
      if (item.kind === 'own') await this.#taking.writeOwn(document, item)
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
