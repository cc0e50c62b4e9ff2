import type { Pen } from '../access/seat.ts'
import type { AwarenessEntry } from './awarenessEntries.ts'
import type { CloseCause } from './closeCodes.ts'
import type { Connection } from './connection.ts'
import { changeFrame, presenceFrame } from './frames.ts'
import type { RelayLimits } from './limits.ts'
import { Presence } from './presence.ts'
import type { Tally } from './tally.ts'
import { Throttle } from './throttle.ts'

/** What the relay tells all clients in its own presence entry. */
export interface RelayWord {
  readonly pen: Pen
  /** Why edits are not kept; null while they are. */
  readonly notKept: string | null
}

/** The connections of one room and what their people show of themselves: latest state only, at a bounded rate. */
export class Company {
  readonly #connections = new Set<Connection>()
  readonly #presence: Presence<Connection>
  readonly #news: Throttle
  readonly #presenceWindowMs: number
  readonly #tally: Tally
  readonly #tellRelays: (entries: readonly AwarenessEntry[]) => void

  /** @param tellRelays is given what people here show of themselves, for other relays */
  constructor(limits: RelayLimits, tally: Tally, tellRelays: (entries: readonly AwarenessEntry[]) => void) {
    this.#tally = tally
    this.#tellRelays = tellRelays
    this.#presence = new Presence(limits.presenceBytes)
    this.#presenceWindowMs = limits.presenceWindowMs
    this.#news = new Throttle(() => limits.presenceWindowMs, async () => this.#passOn())
  }

  get size(): number {
    return this.#connections.size
  }

  get connections(): Iterable<Connection> {
    return this.#connections
  }

  enter(connection: Connection): void {
    this.#connections.add(connection)
    this.tellEverything(connection)
  }

  leave(connection: Connection): void {
    if (!this.#connections.delete(connection)) return
    this.#presence.leave(connection)
    this.#news.ask()
  }

  hear(connection: Connection, awarenessUpdate: Uint8Array): void {
    const heard = this.#presence.hear(connection, awarenessUpdate)
    if (heard.outcome === 'malformed') return connection.close('badFrame')
    if (heard.outcome === 'too large') return connection.refuse('presence-too-large')
    if (heard.firstWords.length > 0) connection.sendPresence(presenceFrame(this.#presence.nudge(heard.firstWords)))
    this.#news.ask()
  }

  /** What people on another relay show of themselves. */
  hearElsewhere(relayId: string, entries: readonly AwarenessEntry[]): void {
    this.#presence.hearElsewhere(relayId, entries)
    this.#news.ask()
  }

  /** The people on that relay are gone, as far as anybody here knows. */
  forgetElsewhere(relayId: string): void {
    this.#presence.forgetElsewhere(relayId)
    this.#news.ask()
  }

  /** Tells other relays of everybody here. */
  introduceAll(): void {
    this.#tellRelays(this.#presence.saidHere())
  }

  /** The person of this connection has a new name. */
  renamed(connection: Connection): void {
    this.#presence.restamp(connection)
    this.#news.ask()
  }

  sayAsRelay(word: RelayWord): void {
    this.#presence.sayAsRelay(word)
    this.#news.ask()
  }

  /** Everybody's presence, for one who comes in or asks. */
  tellEverything(connection: Connection): void {
    connection.sendPresence(presenceFrame(this.#presence.everything()))
  }

  /**
   * So many edits, merged into one update, to everybody as the same bytes. Presence that is nearly due goes with them:
   * what costs most is not the bytes but each write to a socket.
   */
  passOnEdits(news: Uint8Array, edits: number): void {
    const frame = changeFrame(news)
    this.#tally.passedOn(edits, this.#connections.size, frame.byteLength)
    const presence = this.#news.takeOver(this.#presenceWindowMs / 2) ? this.#presence.takeNews() : null
    if (presence === null) {
      for (const connection of this.#connections) connection.send(frame)
      return
    }
    const presenceToo = presenceFrame(presence.update)
    const both = Buffer.concat([frame, presenceToo])
    for (const connection of this.#connections) {
      if (connection.isLagging) connection.send(frame)
      else connection.send(both, presenceToo.byteLength)
    }
    this.#tellRelays(presence.saidHere)
  }

  /** Ends every connection. */
  sendOff(cause: CloseCause): void {
    this.#news.stop()
    for (const connection of this.#connections) connection.close(cause)
    this.#connections.clear()
  }

  #passOn(): void {
    const news = this.#presence.takeNews()
    if (news === null) return
    const frame = presenceFrame(news.update)
    for (const connection of this.#connections) connection.sendPresence(frame)
    this.#tellRelays(news.saidHere)
  }
}
