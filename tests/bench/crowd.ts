import * as decoding from 'lib0/decoding'
import * as encoding from 'lib0/encoding'
import { WebSocket } from 'ws'
import * as Y from 'yjs'
import type { MeasuredServer, Place } from './servers.ts'

const SETTLE_MS = 1_000
const MEASURE_MS = 3_000
const DRAIN_MS = 3_000
/** Ten edits a second each, as a hand that drags makes the page write. */
const EDIT_EVERY_MS = 100
const POINT_EVERY_MS = 50

/** What each person does: edits alone, or also moves a pointer that the others see. */
export type Hands = 'edit' | 'edit and point'

export interface Measured {
  /** One for each edit seen by another person, however many came in one message. */
  readonly latenciesMs: readonly number[]
  /** How many there should have been. */
  readonly expected: number
  readonly cpuSeconds: number
}

/**
 * So many people in one room, each making ten edits a second (and twenty pointer moves), evenly spread over the second. An edit is one clock tick
 * of its maker's document, so what a message brings is read off its clocks, the same way for every server.
 */
export async function measureCrowd(server: MeasuredServer, people: number, hands: Hands): Promise<Measured> {
  const latenciesMs: number[] = []
  const crowd = (await server.places(people)).map((place) => new Person(place))
  const sentMs = new Map(crowd.map((person) => [person.clientId, person.sentMs]))
  let isMeasuring = false
  for (const person of crowd) {
    person.onSeen = (makerId, from, to, nowMs) => {
      if (makerId === person.clientId || !isMeasuring) return
      const sent = sentMs.get(makerId)
      for (let clock = from; clock < to; clock++) {
        const madeMs = sent?.get(clock)
        if (madeMs !== undefined) latenciesMs.push(nowMs - madeMs)
      }
    }
  }
  await Promise.all(crowd.map((person) => person.opened))
  const timers = crowd.map((person, index) => setTimeout(() => person.start(hands), (index * EDIT_EVERY_MS) / people))
  await pause(SETTLE_MS)
  crowd.forEach((person) => person.sentMs.clear())
  isMeasuring = true
  const cpuBefore = await server.cpuSeconds()
  await pause(MEASURE_MS)
  timers.forEach(clearTimeout)
  crowd.forEach((person) => person.stop())
  const expected = crowd.reduce((total, person) => total + person.sentMs.size, 0) * (people - 1)
  for (let waitedMs = 0; latenciesMs.length < expected && waitedMs < DRAIN_MS; waitedMs += 10) await pause(10)
  const cpuSeconds = (await server.cpuSeconds()) - cpuBefore
  crowd.forEach((person) => person.leave())
  return { latenciesMs, expected, cpuSeconds }
}

/** Some thousands of edits ahead of any measurement: a server's code is compiled as it runs, and relays run for days. */
export async function warmUp(server: MeasuredServer): Promise<void> {
  const crowd = (await server.places(10)).map((place) => new Person(place))
  await Promise.all(crowd.map((person) => person.opened))
  crowd.forEach((person) => person.start('edit and point', 10))
  await pause(6_000)
  crowd.forEach((person) => person.stop())
  crowd.forEach((person) => person.leave())
}

class Person {
  readonly opened: Promise<void>
  /** When each clock tick was sent. */
  readonly sentMs = new Map<number, number>()
  onSeen: (makerId: number, fromClock: number, toClock: number, nowMs: number) => void = () => {}
  readonly #doc = new Y.Doc()
  readonly #socket: WebSocket
  #timers: NodeJS.Timeout[] = []
  #presenceClock = 0

  constructor({ url, headers }: Place) {
    this.#socket = new WebSocket(url, { headers })
    this.opened = new Promise((resolve, reject) => {
      this.#socket.once('open', resolve)
      this.#socket.once('error', reject)
    })
    this.#socket.on('message', (data: Buffer) => this.#hear(data))
    this.#doc.on('update', (update: Uint8Array) => this.#socket.send(syncMessage(2, update)))
  }

  get clientId(): number {
    return this.#doc.clientID
  }

  start(hands: Hands, haste = 1): void {
    const plan = this.#doc.getMap('bench')
    let xMetres = 0
    this.#timers.push(setInterval(() => {
      this.sentMs.set(Y.getState(this.#doc.store, this.clientId), performance.now())
      plan.set(`light-${this.clientId}`, (xMetres += 0.01))
    }, EDIT_EVERY_MS / haste))
    if (hands === 'edit and point') this.#timers.push(setInterval(() => this.#point(), POINT_EVERY_MS / haste))
  }

  stop(): void {
    this.#timers.forEach(clearInterval)
  }

  leave(): void {
    this.#socket.terminate()
  }

  #point(): void {
    this.#presenceClock += 1
    const state = { pointer: { xMetres: this.#presenceClock / 100, yMetres: 1 }, lookId: 'dusk' }
    this.#socket.send(presenceMessage(this.clientId, this.#presenceClock, JSON.stringify(state)))
  }

  #hear(data: Uint8Array): void {
    const nowMs = performance.now()
    const decoder = decoding.createDecoder(data)
    if (decoding.readVarUint(decoder) !== 0) return
    const step = decoding.readVarUint(decoder)
    const bytes = decoding.readVarUint8Array(decoder)
    if (step === 0) return this.#socket.send(syncMessage(1, Y.encodeStateAsUpdate(this.#doc, bytes)))
    if (step !== 2) return
    const { from, to } = Y.parseUpdateMeta(bytes)
    for (const [makerId, toClock] of to) this.onSeen(makerId, from.get(makerId) ?? 0, toClock, nowMs)
  }
}

function syncMessage(step: number, bytes: Uint8Array): Uint8Array {
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, 0)
  encoding.writeVarUint(encoder, step)
  encoding.writeVarUint8Array(encoder, bytes)
  return encoding.toUint8Array(encoder)
}

function presenceMessage(clientId: number, clock: number, json: string): Uint8Array {
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

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms))
}
