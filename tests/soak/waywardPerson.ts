import * as decoding from 'lib0/decoding'
import * as encoding from 'lib0/encoding'
import { WebSocket } from 'ws'
import * as Y from 'yjs'
import type { Dice } from './dice.ts'

/** Of each message on its way, in either direction. */
const LOST = 0.08
const TWICE = 0.08
const LATE = 0.15

/** Whom a person is let in as. */
export interface Admission {
  readonly seatId: string
  readonly secret: string
}

/**
 * One who edits a document over a wire that loses, doubles and reorders messages in both directions, until it is told
 * to behave. Speaks the stock protocol: 0 sync (0 ask, 1 answer, 2 change); y-protocols 1.0.7.
 */
export class WaywardPerson {
  readonly doc = new Y.Doc()
  readonly #dice: Dice
  readonly #admission: Admission
  #socket: WebSocket | null = null
  #isWayward = true
  #lateOut: Uint8Array[] = []
  #lateIn: Uint8Array[] = []

  constructor(clientId: number, admission: Admission, dice: Dice) {
    this.doc.clientID = clientId
    this.#admission = admission
    this.#dice = dice
    this.doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (origin !== this) this.#send(message(2, update))
    })
  }

  /** Goes to that relay, leaving any other, and asks for all that is missing. Resolves once in; false when it is not let in. */
  async join(origin: string): Promise<boolean> {
    this.leave()
    const { seatId, secret } = this.#admission
    const socket = new WebSocket(`${origin}/s/${seatId}/plan`, { headers: { authorization: `Bearer ${secret}` } })
    this.#socket = socket
    socket.on('message', (data: Buffer) => this.#hear(new Uint8Array(data), socket))
    const isIn = await new Promise<boolean>((resolve) => {
      socket.once('open', () => resolve(true))
      socket.once('error', () => resolve(false))
    })
    socket.on('error', () => {})
    if (isIn) this.ask()
    return isIn
  }

  leave(): void {
    this.#socket?.terminate()
    this.#socket = null
    this.#lateOut = []
    this.#lateIn = []
  }

  get isIn(): boolean {
    return this.#socket?.readyState === WebSocket.OPEN
  }

  ask(): void {
    if (this.isIn) this.#socket?.send(message(0, Y.encodeStateVector(this.doc)))
  }

  /** From now on everything arrives, once and in order. What was held back comes now; what was lost stays lost. */
  behave(): void {
    this.#isWayward = false
    for (const late of this.#lateOut.splice(0)) this.#socket?.send(late)
    for (const late of this.#lateIn.splice(0)) Y.applyUpdate(this.doc, late, this)
  }

  /** One edit of any kind that a plan knows: values set and taken out, lists, words, things within things. */
  edit(): void {
    const dice = this.#dice
    const map = this.doc.getMap<unknown>('m')
    const list = this.doc.getArray<number>('l')
    const words = this.doc.getText('t')
    this.doc.transact(() => {
      switch (dice.below(7)) {
        case 0: case 1: return void map.set(`k${dice.below(12)}`, dice.below(1_000))
        case 2: return map.delete(`k${dice.below(12)}`)
        case 3: return list.insert(dice.below(list.length + 1), [dice.below(1_000), dice.below(1_000)])
        case 4: return list.length > 0 ? list.delete(dice.below(list.length), 1) : undefined
        case 5: return words.insert(dice.below(words.length + 1), dice.oneOf(['rim', 'fill', 'Licht 光', 'x']))
        default: {
          const inner = map.get('inner')
          if (inner instanceof Y.Map) return void inner.set(`i${dice.below(6)}`, dice.below(100))
          return void map.set('inner', new Y.Map([['i0', dice.below(100)]]))
        }
      }
    })
  }

  #send(bytes: Uint8Array): void {
    if (!this.isIn) return
    const out = (each: Uint8Array) => this.#socket?.send(each)
    if (this.#isWayward) this.#mistreat(bytes, this.#lateOut, out)
    else out(bytes)
  }

  #hear(data: Uint8Array, socket: WebSocket): void {
    if (socket !== this.#socket) return
    const decoder = decoding.createDecoder(data)
    if (decoding.readVarUint(decoder) !== 0) return
    const step = decoding.readVarUint(decoder)
    const bytes = decoding.readVarUint8Array(decoder).slice()
    if (step === 0) return this.#send(message(1, Y.encodeStateAsUpdate(this.doc, bytes)))
    const take = (each: Uint8Array) => Y.applyUpdate(this.doc, each, this)
    if (this.#isWayward) this.#mistreat(bytes, this.#lateIn, take)
    else take(bytes)
  }

  #mistreat(bytes: Uint8Array, late: Uint8Array[], deliver: (bytes: Uint8Array) => void): void {
    if (this.#dice.happens(LOST)) return
    if (this.#dice.happens(LATE)) return void late.push(bytes)
    deliver(bytes)
    if (this.#dice.happens(TWICE)) deliver(bytes)
    for (const overtaken of late.splice(0)) deliver(overtaken)
  }
}

function message(step: number, bytes: Uint8Array): Uint8Array {
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, 0)
  encoding.writeVarUint(encoder, step)
  encoding.writeVarUint8Array(encoder, bytes)
  return encoding.toUint8Array(encoder)
}
