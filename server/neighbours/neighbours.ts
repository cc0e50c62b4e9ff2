import { randomBytes } from 'node:crypto'
import type { DocumentKey } from '../store/store.ts'
import type { StoreError } from '../store/storeError.ts'
import type { Line } from './line.ts'
import { readNews, writeNews, type News, type PresenceEntry } from './news.ts'

/** What a relay does about others. */
export interface NeighbourListener {
  /** A document's log has grown up to that sequence. */
  rowsKept(key: DocumentKey, sequence: number): void
  presenceHeard(relayId: string, key: DocumentKey, entries: readonly PresenceEntry[]): void
  /**
   * Another relay has people on this document: it is to be told of those who are here, and may have kept something
   * before it knew of us. @returns whether it is open here
   */
  roomShared(key: DocumentKey): boolean
  /** A relay stopped, or was not heard of for too long. */
  relayLost(relayId: string): void
  penMoved(jobId: string): void
  seatChanged(seatId: string): void
  linksRevoked(linkIds: readonly string[]): void
  /** News may have been missed, or a relay came that knows nothing yet: tell it of all rooms, and look at the store. */
  cameBack(): void
  lineLost(error: StoreError): void
}

export interface NeighbourPace {
  /** How often a relay says that it is here. */
  readonly hereMs: number
  /** One that was not heard of for this long is gone, and the people on it with it. */
  readonly lostMs: number
}

const PACE: NeighbourPace = { hereMs: 2_000, lostMs: 7_000 }

/**
 * The other relays on the same store, as one relay knows them: which there are, which documents people are on there,
 * and what they say.
 */
export class Neighbours {
  /** Names this relay among them; new at every start. */
  readonly relayId = randomBytes(9).toString('base64url')
  readonly #line: Line
  readonly #pace: NeighbourPace
  readonly #heardMs = new Map<string, number>()
  /** By document, who else has people on it. */
  readonly #interested = new Map<string, Set<string>>()
  #listener: NeighbourListener | null = null
  #beat: NodeJS.Timeout | undefined

  constructor(line: Line, pace: NeighbourPace = PACE) {
    this.#line = line
    this.#pace = pace
  }

  /** Opens the line; from then on the listener is told. @throws StoreError when it does not open */
  async start(listener: NeighbourListener): Promise<void> {
    this.#listener = listener
    await this.#line.open({
      heard: (text) => this.#heard(text),
      opened: () => {
        this.#say({ kind: 'here' })
        listener.cameBack()
      },
      lost: (error) => listener.lineLost(error),
    })
    this.#beat = setInterval(() => this.#keepTime(), this.#pace.hereMs).unref()
  }

  /** How many other relays there are. */
  get count(): number {
    return this.#heardMs.size
  }

  /** Whether another relay has people on this document. */
  shares(key: DocumentKey): boolean {
    return this.#interested.has(nameOf(key))
  }

  /** People may come to this document here. Others answer with who is there, and tell from then on. */
  opened(key: DocumentKey): void {
    this.#say({ kind: 'open', ...plain(key), isAnswer: false })
  }

  /** Nobody is on this document here any more. */
  shut(key: DocumentKey): void {
    this.#say({ kind: 'shut', ...plain(key) })
  }

  /** The document's log has grown up to that sequence. Of several such only the last need arrive. */
  rowsKept(key: DocumentKey, sequence: number): void {
    if (this.shares(key)) this.#say({ kind: 'rows', ...plain(key), sequence }, `rows ${nameOf(key)}`)
  }

  /** What people here show of themselves, stamped. */
  presence(key: DocumentKey, entries: readonly PresenceEntry[]): void {
    if (entries.length > 0 && this.shares(key)) this.#say({ kind: 'presence', ...plain(key), entries: [...entries] })
  }

  /** The pen of the job is with somebody else, by now in the store too. */
  penMoved(jobId: string): void {
    this.#say({ kind: 'pen', jobId })
  }

  /** The seat has another name or link, by now in the store too. */
  seatChanged(seatId: string): void {
    this.#say({ kind: 'seat', seatId })
  }

  /** Whoever was seated by these links is out. */
  linksRevoked(linkIds: Iterable<string>): void {
    this.#say({ kind: 'revoked', linkIds: [...linkIds] })
  }

  /** Takes leave of the others; nothing is told or heard any more. */
  async stop(): Promise<void> {
    clearInterval(this.#beat)
    this.#listener = null
    this.#say({ kind: 'gone' })
    await this.#line.close()
  }

  #say(news: News, place?: string): void {
    this.#line.say(writeNews(this.relayId, news), place)
  }

  #keepTime(): void {
    this.#say({ kind: 'here' })
    const nowMs = performance.now()
    for (const [relayId, heardMs] of this.#heardMs) if (nowMs - heardMs > this.#pace.lostMs) this.#forget(relayId)
  }

  #heard(text: string): void {
    const said = readNews(text)
    if (said === null || said.from === this.relayId || this.#listener === null) return
    if (said.news.kind === 'gone') return this.#forget(said.from)
    const isNew = !this.#heardMs.has(said.from)
    this.#heardMs.set(said.from, performance.now())
    if (isNew) {
      this.#say({ kind: 'here' })
      this.#listener.cameBack()
    }
    this.#serve(this.#listener, said.from, said.news)
  }

  #serve(listener: NeighbourListener, from: string, news: News): void {
    switch (news.kind) {
      case 'open': return this.#noteOpen(listener, from, news)
      case 'shut': return this.#lostInterest(nameOf(news), from)
      case 'rows': return listener.rowsKept(plain(news), news.sequence)
      case 'presence': return listener.presenceHeard(from, plain(news), news.entries)
      case 'pen': return listener.penMoved(news.jobId)
      case 'seat': return listener.seatChanged(news.seatId)
      case 'revoked': return listener.linksRevoked(news.linkIds)
    }
  }

  #noteOpen(listener: NeighbourListener, from: string, news: News & { kind: 'open' }): void {
    const name = nameOf(news)
    this.#interested.set(name, (this.#interested.get(name) ?? new Set()).add(from))
    const isOpenHere = listener.roomShared(plain(news))
    if (isOpenHere && !news.isAnswer) this.#say({ kind: 'open', ...plain(news), isAnswer: true })
  }

  #forget(relayId: string): void {
    if (!this.#heardMs.delete(relayId)) return
    for (const name of [...this.#interested.keys()]) this.#lostInterest(name, relayId)
    this.#listener?.relayLost(relayId)
  }

  #lostInterest(name: string, relayId: string): void {
    const relays = this.#interested.get(name)
    if (relays?.delete(relayId) === true && relays.size === 0) this.#interested.delete(name)
  }
}

function nameOf({ jobId, document }: DocumentKey): string {
  return `${jobId}/${document}`
}

function plain({ jobId, document }: DocumentKey): DocumentKey {
  return { jobId, document }
}
