import * as decoding from 'lib0/decoding'
import * as encoding from 'lib0/encoding'
import * as Y from 'yjs'
import { LeanSocket } from './leanSocket.ts'
import type { Place } from './servers.ts'

/** Twenty pointer moves a second. */
const POINT_EVERY_MS = 50

/** What each person does: edits alone, or also moves a pointer that the others see. */
export type Hands = 'edit' | 'edit and point'

/** Clocks that a message brings, by who made them; null for a message that brings none. */
type Brought = readonly (readonly [makerId: number, from: number, to: number])[] | null

/** The same bytes reach everybody in a room: they are taken apart once for all who are in this process, newest first. */
const known: { readonly data: Buffer, readonly brought: Brought }[] = []
const MOST_KNOWN = 8

/** Somebody with a document of their own in a room of a measured server. */
export class Person {
  readonly opened: Promise<void>
  /** When each clock tick was sent. */
  readonly sentMs = new Map<number, number>()
  onSeen: (makerId: number, fromClock: number, toClock: number, nowMs: number) => void = () => {}
  /** Told of every answer to "what am I missing". */
  onAnswer: (update: Uint8Array) => void = () => {}
  readonly doc = new Y.Doc()
  readonly #place: Place
  readonly #socket: LeanSocket
  #timers: NodeJS.Timeout[] = []
  #presenceClock = 0

  constructor(place: Place) {
    this.#place = place
    this.#socket = new LeanSocket(place.url, place.headers)
    this.#socket.onMessage = (bytes, from, to) => this.#hear(bytes, from, to)
    this.opened = this.#socket.opened.then(() => place.hello.forEach((message) => this.#socket.send(message)))
    this.doc.on('update', (update: Uint8Array) => this.say(syncMessage(2, update)))
  }

  get clientId(): number {
    return this.doc.clientID
  }

  start(hands: Hands, editEveryMs: number, afterMs: number): void {
    const plan = this.doc.getMap('bench')
    let xMetres = 0
    const edit = () => {
      this.sentMs.set(Y.getState(this.doc.store, this.clientId), performance.now())
      plan.set(`light-${this.clientId}`, (xMetres += 0.01))
    }
    this.#timers.push(setTimeout(() => {
      this.#timers.push(setInterval(edit, editEveryMs))
      if (hands === 'edit and point') this.#timers.push(setInterval(() => this.#point(), POINT_EVERY_MS))
    }, afterMs))
  }

  stop(): void {
    this.#timers.forEach(clearInterval)
    this.#timers = []
  }

  leave(): void {
    this.stop()
    this.#socket.leave()
  }

  say(message: Uint8Array): void {
    this.#socket.send(Buffer.concat([this.#place.prefix, message]))
  }

  /** "I have nothing: what is there?" */
  ask(): void {
    this.say(syncMessage(0, Y.encodeStateVector(new Y.Doc())))
  }

  #point(): void {
    this.#presenceClock += 1
    const state = { pointer: { xMetres: this.#presenceClock / 100, yMetres: 1 }, lookId: 'dusk' }
    this.say(presenceMessage(this.clientId, this.#presenceClock, JSON.stringify(state)))
  }

  #hear(bytes: Buffer, from: number, to: number): void {
    const nowMs = performance.now()
    const kind = from + this.#place.prefix.byteLength
    if (bytes[kind] !== 0 && bytes[kind] !== 4) return
    const step = bytes[kind + 1]
    if (step === 2) {
      for (const [makerId, fromClock, toClock] of broughtBy(bytes, from, to, kind) ?? []) this.onSeen(makerId, fromClock, toClock, nowMs)
    } else if (step === 0) {
      this.say(syncMessage(1, Y.encodeStateAsUpdate(this.doc, payloadOf(bytes, to, kind))))
    } else if (step === 1) this.onAnswer(Uint8Array.from(payloadOf(bytes, to, kind)))
  }
}

/** What stands behind the kind and the step of a message. */
function payloadOf(bytes: Buffer, to: number, kind: number): Uint8Array {
  const decoder = decoding.createDecoder(bytes.subarray(kind + 2, to))
  return decoding.readVarUint8Array(decoder)
}

function broughtBy(bytes: Buffer, from: number, to: number, kind: number): Brought {
  for (const { data, brought } of known) {
    if (data.length === to - from && bytes.compare(data, 0, data.length, from, to) === 0) return brought
  }
  const clocks = Y.parseUpdateMeta(payloadOf(bytes, to, kind))
  const brought = [...clocks.to].map(([makerId, toClock]) => [makerId, clocks.from.get(makerId) ?? 0, toClock] as const)
  known.unshift({ data: Buffer.from(bytes.subarray(from, to)), brought })
  known.length = Math.min(known.length, MOST_KNOWN)
  return brought
}

export function syncMessage(step: number, bytes: Uint8Array): Uint8Array {
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, 0)
  encoding.writeVarUint(encoder, step)
  encoding.writeVarUint8Array(encoder, bytes)
  return encoding.toUint8Array(encoder)
}

export function presenceMessage(clientId: number, clock: number, json: string): Uint8Array {
  const entry = encoding.createEncoder()
  encoding.writeVarUint(entry, 1)
  encoding.writeVarUint(entry, clientId)
  encoding.writeVarUint(entry, clock)
  encoding.writeVarString(entry, json)
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, 1)
  encoding.writeVarUint8Array(encoder, encoding.toUint8Array(entry))
  return encoding.toUint8Array(encoder)
}
