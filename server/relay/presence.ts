import { randomInt } from 'node:crypto'
import type { Seat } from '../access/seat.ts'
import { goneEntry, readAwarenessEntries, writeAwarenessEntries, type AwarenessEntry } from './awarenessEntries.ts'

/** Whoever speaks for a presence: a live connection, known here only by its seat. */
export interface PresenceSource {
  readonly seat: Seat
}

/** Whose word a state is: a connection's here, or another relay's by that relay's id. */
interface Present<Source> extends AwarenessEntry {
  readonly source: Source | string
  readonly seatId: string
  /** What the client itself said, as JSON: kept so that a new name can be stamped on it. */
  readonly said: string
}

/** Something to tell: a state, or that somebody is gone. */
interface News extends AwarenessEntry {
  /** Another relay's id when it comes from there; null for the relay's own word. */
  readonly source: unknown
}

/** What changed in a room's presence since it was last asked. */
export interface PresenceNews {
  /** All of it, latest state only, as one awareness update for the connections here. */
  readonly update: Uint8Array
  /** What of it was said here, for other relays. */
  readonly saidHere: readonly AwarenessEntry[]
}

/** What came of hearing one awareness message. */
export type Heard =
  | { readonly outcome: 'malformed' }
  | { readonly outcome: 'too large' }
  /** `firstWords`: entries heard for the first time on this connection. */
  | { readonly outcome: 'heard'; readonly firstWords: readonly AwarenessEntry[] }

/** A stock page has one; two tabs of one browser may speak over one connection. */
const CLIENT_IDS_PER_CONNECTION = 4
/** How many who left are remembered, so that a late echo of them is not taken for somebody new. */
const REMEMBERED_OWNERS = 2_000

/**
 * Who is in a room and what they show of themselves. Each client id belongs to the seat that first spoke for it, so
 * nobody can set or remove another's state; echoes of others' states, which stock clients send all the time, fall
 * through. The seat stamped on a state is the relay's own word.
 */
export class Presence<Source extends PresenceSource> {
  /** The client id under which the relay itself speaks. */
  readonly relayClientId = randomInt(1, 2 ** 31)
  readonly #present = new Map<number, Present<Source>>()
  readonly #ownerSeats = new Map<number, string>()
  readonly #news = new Map<number, News>()
  /** Clocks at which people here were told that somebody on a lost relay is gone. */
  readonly #forgotten = new Map<number, number>()
  /** Who has spoken before. */
  readonly #known = new WeakSet<Source>()
  readonly #maxStateBytes: number
  #relayEntry: AwarenessEntry

  constructor(maxStateBytes: number) {
    this.#maxStateBytes = maxStateBytes
    this.#relayEntry = { clientId: this.relayClientId, clock: 0, json: encodeJson({}) }
  }

  hear(source: Source, awarenessUpdate: Uint8Array): Heard {
    let entries: AwarenessEntry[]
    try {
      entries = readAwarenessEntries(awarenessUpdate)
    } catch {
      return { outcome: 'malformed' }
    }
    const firstWords: AwarenessEntry[] = []
    // What one says first is of oneself; later words may be echoes of what another page of the same seat said.
    const isIntroduction = !this.#known.has(source)
    this.#known.add(source)
    for (const entry of entries) {
      if (!this.#maySpeakFor(source, entry.clientId)) continue
      const before = this.#present.get(entry.clientId)
      const said = textOf(entry.json)
      const state = readState(said)
      if (state === undefined) return { outcome: 'malformed' }
      if (state === null) {
        if (before !== undefined && entry.clock >= before.clock) this.#remove(before, entry.clock)
        continue
      }
      const comesBack = isIntroduction && before !== undefined && before.source !== source
      if (before !== undefined && entry.clock <= before.clock && !comesBack) continue
      if (before === undefined && this.#count(source) >= CLIENT_IDS_PER_CONNECTION) continue
      const stamped = stamp(said, state, source.seat)
      if (stamped === undefined) return { outcome: 'malformed' }
      if (stamped.byteLength > this.#maxStateBytes) return { outcome: 'too large' }
      const clock = Math.max(entry.clock, before?.clock ?? 0)
      if (before?.source !== source) firstWords.push({ ...entry, clock })
      this.#put({ clientId: entry.clientId, clock, json: stamped, source, seatId: source.seat.seatId, said })
    }
    return { outcome: 'heard', firstWords }
  }

  /** What people said on another relay, which has stamped it. */
  hearElsewhere(relayId: string, entries: readonly AwarenessEntry[]): void {
    for (const entry of entries) {
      const before = this.#present.get(entry.clientId)
      const said = textOf(entry.json)
      const state = readState(said)
      if (state === null && before?.source === relayId) this.#remove(before, Math.max(entry.clock, before.clock))
      if (state === null || state === undefined || entry.clientId === this.relayClientId) continue
      if (before !== undefined && entry.clock <= before.clock) continue
      const { seatId } = (state.seat ?? {}) as { seatId?: unknown }
      const owner = this.#ownerSeats.get(entry.clientId)
      if (typeof seatId !== 'string' || (owner !== undefined && owner !== seatId)) continue
      // One tick on from "gone", or clients would not look at it.
      const clock = entry.clock === this.#forgotten.get(entry.clientId) ? entry.clock + 1 : entry.clock
      this.#put({ ...entry, clock, source: relayId, seatId, said })
    }
  }

  /** Takes away what was said on another relay. */
  forgetElsewhere(relayId: string): void {
    for (const present of this.#of(relayId)) {
      this.#remove(present, present.clock)
      this.#forgotten.set(present.clientId, present.clock)
    }
  }

  /** All that was said here, for another relay. */
  saidHere(): AwarenessEntry[] {
    return [...this.#present.values()].filter(({ source }) => typeof source !== 'string')
  }

  /** Takes away what this connection spoke for. */
  leave(source: Source): void {
    for (const present of this.#of(source)) this.#remove(present, present.clock)
  }

  /** Stamps anew what this connection spoke for, after its seat changed its name. */
  restamp(source: Source): void {
    for (const present of this.#of(source)) {
      const stamped = stamp(present.said, readState(present.said) ?? {}, source.seat)
      // One tick on, or clients would not look at it; the speaker's own next word is at least as late.
      if (stamped !== undefined) this.#put({ ...present, clock: present.clock + 1, json: stamped })
    }
  }

  /** Sets what the relay itself says to all clients, under `relay`. Saying the same again keeps it from going stale. */
  sayAsRelay(state: object): void {
    this.#relayEntry = { clientId: this.relayClientId, clock: this.#relayEntry.clock + 1, json: encodeJson({ relay: state }) }
    // Every relay speaks for itself.
    this.#news.set(this.relayClientId, { ...this.#relayEntry, source: null })
  }

  /** All that changed since it was last asked; null when nothing did. */
  takeNews(): PresenceNews | null {
    if (this.#news.size === 0) return null
    const news = [...this.#news.values()]
    this.#news.clear()
    return { update: writeAwarenessEntries(news), saidHere: news.filter(({ source }) => source !== null && typeof source !== 'string') }
  }

  /** Everybody's state and the relay's, for one who comes in or asks. */
  everything(): Uint8Array {
    return writeAwarenessEntries([this.#relayEntry, ...this.#present.values()])
  }

  /**
   * To be sent back to who spoke for the first time on a connection. Others may remember an equal clock of theirs from
   * before and would not look; a stock client answers "you are gone" by saying its state again, one tick later.
   */
  nudge(firstWords: readonly AwarenessEntry[]): Uint8Array {
    return writeAwarenessEntries(firstWords.map(({ clientId, clock }) => goneEntry(clientId, clock)))
  }

  #maySpeakFor(source: Source, clientId: number): boolean {
    if (clientId === this.relayClientId) return false
    const owner = this.#ownerSeats.get(clientId)
    return owner === undefined || owner === source.seat.seatId
  }

  #put(present: Present<Source>): void {
    const isThere = this.#present.has(present.clientId)
    this.#present.set(present.clientId, present)
    this.#news.set(present.clientId, present)
    // Of those who are there none is forgotten.
    if (isThere) return
    this.#forgotten.delete(present.clientId)
    this.#ownerSeats.delete(present.clientId)
    this.#ownerSeats.set(present.clientId, present.seatId)
    this.#forgetOldOwners()
  }

  #remove(present: Present<Source>, clock: number): void {
    this.#present.delete(present.clientId)
    this.#news.set(present.clientId, { ...goneEntry(present.clientId, clock), source: present.source })
  }

  #forgetOldOwners(): void {
    for (const clientId of this.#ownerSeats.keys()) {
      if (this.#ownerSeats.size <= REMEMBERED_OWNERS) return
      if (!this.#present.has(clientId)) this.#ownerSeats.delete(clientId)
    }
  }

  #of(source: Source | string): Present<Source>[] {
    return [...this.#present.values()].filter((present) => present.source === source)
  }

  #count(source: Source): number {
    return this.#of(source).length
  }
}

function textOf(json: Uint8Array): string {
  return Buffer.from(json.buffer, json.byteOffset, json.byteLength).toString('utf8')
}

/** The state said; null for "gone"; undefined when it is no JSON object. */
function readState(json: string): Record<string, unknown> | null | undefined {
  try {
    const state: unknown = JSON.parse(json)
    return typeof state === 'object' && !Array.isArray(state) ? (state as Record<string, unknown> | null) : undefined
  } catch {
    return undefined
  }
}

/** Longer ones may nest too deep to be written again. */
const SHORT_STATE = 2_000

/**
 * The state with the relay's word on whose it is; undefined when it nests too deep to be written. To a short one that
 * does not speak of these things itself, as hands that move say sixty times a second, it is only added.
 */
function stamp(said: string, state: Readonly<Record<string, unknown>>, seat: Seat): Uint8Array | undefined {
  if (said.length < SHORT_STATE && !('relay' in state) && !('seat' in state)) {
    const open = said.slice(0, said.lastIndexOf('}'))
    return Buffer.from(`${open}${hasNothing(state) ? '' : ','}"seat":${seatJson(seat)}}`, 'utf8')
  }
  const { relay: _onlyTheRelaySaysThat, ...rest } = state
  try {
    const { seatId, name, role } = seat
    return encodeJson({ ...rest, seat: { seatId, name, role } })
  } catch {
    return undefined
  }
}

function hasNothing(state: object): boolean {
  for (const _key in state) return false
  return true
}

const seatJsons = new WeakMap<Seat, string>()

function seatJson(seat: Seat): string {
  const { seatId, name, role } = seat
  const json = seatJsons.get(seat) ?? JSON.stringify({ seatId, name, role })
  seatJsons.set(seat, json)
  return json
}

function encodeJson(value: unknown): Uint8Array {
  return Buffer.from(JSON.stringify(value), 'utf8')
}
