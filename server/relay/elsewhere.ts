import type { Access, AccessListener } from '../access/access.ts'
import type { Seat } from '../access/seat.ts'
import type { Log } from '../log.ts'
import type { Neighbours, NeighbourListener } from '../neighbours/neighbours.ts'
import type { PresenceEntry } from '../neighbours/news.ts'
import type { DocumentKey, Store } from '../store/store.ts'
import type { StoreError } from '../store/storeError.ts'
import type { Rooms } from './rooms.ts'
import type { StoreHealth } from './storeHealth.ts'

export interface ElsewhereParts {
  readonly neighbours: Neighbours
  readonly store: Store
  readonly access: Access
  readonly health: StoreHealth
  readonly rooms: Rooms
  readonly log: Log
  /** Brings what happened to live connections here. */
  readonly here: AccessListener
  /** The seats of those connections. */
  readonly liveSeats: () => Iterable<Seat>
}

/** News can be lost with the relay that was to tell it; looking finds what it was about, in shared rooms soon. */
const LOOK_AT_SHARED_MS = 5_000
const LOOKS_UNTIL_EVERYTHING = 6

/**
 * What happens on other relays, brought to this one: it is heard as news, and read in the store. News about who may do
 * what is served one after the other, since a seat that moves off a link must not fall with that link.
 */
export class Elsewhere implements NeighbourListener {
  readonly #parts: ElsewhereParts
  readonly #looking: NodeJS.Timeout
  #looks = 0
  #serving: Promise<void> = Promise.resolve()
  #isStopped = false

  constructor(parts: ElsewhereParts) {
    this.#parts = parts
    this.#looking = setInterval(() => this.#look(), LOOK_AT_SHARED_MS).unref()
    parts.access.listen({
      penMoved: (jobId) => parts.neighbours.penMoved(jobId),
      seatRenamed: (seatId) => parts.neighbours.seatChanged(seatId),
      seatMoved: (seatId) => parts.neighbours.seatChanged(seatId),
      linksRevoked: (linkIds) => parts.neighbours.linksRevoked(linkIds),
    })
  }

  async stop(): Promise<void> {
    this.#isStopped = true
    clearInterval(this.#looking)
    await this.#parts.neighbours.stop()
  }

  rowsKept(key: DocumentKey, sequence: number): void {
    this.#parts.rooms.find(key)?.readOn(sequence)
  }

  presenceHeard(relayId: string, key: DocumentKey, entries: readonly PresenceEntry[]): void {
    this.#parts.rooms.find(key)?.presenceHeard(relayId, entries)
  }

  roomShared(key: DocumentKey): boolean {
    const room = this.#parts.rooms.find(key)
    room?.shared()
    return room !== undefined
  }

  relayLost(relayId: string): void {
    this.#parts.log.info('another relay is gone', { relayId })
    for (const room of this.#parts.rooms.all()) room.relayLost(relayId)
  }

  penMoved(jobId: string): void {
    this.#inTurn(() => this.#readPen(jobId))
  }

  seatChanged(seatId: string): void {
    this.#inTurn(() => this.#readSeats((seat) => seat.seatId === seatId))
  }

  linksRevoked(linkIds: readonly string[]): void {
    this.#inTurn(async () => {
      await this.#readSeats((seat) => linkIds.includes(seat.linkId))
      this.#parts.here.linksRevoked(new Set(linkIds))
    })
  }

  cameBack(): void {
    for (const room of this.#parts.rooms.all()) {
      room.tellRelays()
      room.shared()
    }
    this.#lookAtAccess()
  }

  lineLost(error: StoreError): void {
    this.#parts.log.warn('line to other relays lost', { detail: error.message })
    this.#parts.health.failed(error)
  }

  #look(): void {
    this.#looks += 1
    const isAtEverything = this.#looks % LOOKS_UNTIL_EVERYTHING === 0
    for (const room of this.#parts.rooms.all()) {
      if (isAtEverything || this.#parts.neighbours.shares(room.key)) room.readOn(Infinity)
    }
    if (isAtEverything) this.#lookAtAccess()
  }

  #lookAtAccess(): void {
    const jobIds = new Set([...this.#parts.rooms.all()].map((room) => room.key.jobId))
    for (const jobId of jobIds) this.penMoved(jobId)
    this.#inTurn(() => this.#readSeats(() => true))
  }

  async #readPen(jobId: string): Promise<void> {
    this.#parts.here.penMoved(jobId, await this.#parts.access.penOf(jobId))
  }

  /** Brings the live seats that fit up to what is kept of them. */
  async #readSeats(fits: (seat: Seat) => boolean): Promise<void> {
    const { store, here, liveSeats } = this.#parts
    const seats = new Map([...liveSeats()].filter(fits).map((seat) => [seat.seatId, seat]))
    for (const seat of seats.values()) {
      const record = await store.seat(seat.seatId)
      const link = record === null ? null : await store.link(record.linkId)
      if (record === null || link === null) continue
      if (record.name !== seat.name) here.seatRenamed(seat.seatId, record.name)
      if (record.linkId !== seat.linkId) here.seatMoved(seat.seatId, link.linkId, link.expiresMs)
      if (link.revokedMs !== null) here.linksRevoked(new Set([link.linkId]))
    }
  }

  /** What cannot be read now is read when the line is open again, or with the next look. */
  #inTurn(serve: () => Promise<void>): void {
    this.#serving = this.#serving.then(async () => {
      if (!this.#isStopped) await serve()
    }).catch((thrown: unknown) => {
      this.#parts.log.warn('news of another relay not served', { detail: String(thrown) })
    })
  }
}
