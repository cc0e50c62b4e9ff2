import * as decoding from 'lib0/decoding'
import * as encoding from 'lib0/encoding'
import { onTestFinished } from 'vitest'
import { WebSocket } from 'ws'
import * as Y from 'yjs'
import type { Seated, TestRelay } from './openRelay.ts'

/** What a peer heard, told apart by the stock protocol's own numbers (y-protocols 1.0.7, y-websocket 3.1.0). */
export type Heard =
  | { readonly kind: 'ask'; readonly stateVector: Uint8Array }
  | { readonly kind: 'answer'; readonly update: Uint8Array }
  | { readonly kind: 'change'; readonly update: Uint8Array }
  | { readonly kind: 'presence'; readonly states: ReadonlyMap<number, { readonly clock: number; readonly state: unknown }> }
  | { readonly kind: 'denied'; readonly reason: string }

/** A socket that speaks byte by byte: it can say what no honest client would. */
export class RawPeer {
  readonly heard: Heard[] = []
  readonly opened: Promise<void>
  /** The code and words with which the connection ended. */
  readonly closed: Promise<{ readonly code: number; readonly reason: string }>
  readonly socket: WebSocket
  #waiting: (() => void)[] = []

  constructor(url: string, headers: Record<string, string>) {
    this.socket = new WebSocket(url, { headers })
    this.opened = new Promise((resolve, reject) => {
      this.socket.once('open', resolve)
      this.socket.once('error', reject)
    })
    this.opened.catch(() => {})
    this.closed = new Promise((resolve) => this.socket.once('close', (code, reason) => resolve({ code, reason: reason.toString() })))
    this.socket.on('error', () => {})
    this.socket.on('message', (data: Buffer) => {
      this.heard.push(readHeard(data))
      this.#waiting.splice(0).forEach((resume) => resume())
    })
    onTestFinished(() => this.socket.terminate())
  }

  send(bytes: Uint8Array): void {
    this.socket.send(bytes)
  }

  /** The first thing heard (from `after` on) that fits; waits for it. Rejects when the connection ends first. */
  async hear<Kind extends Heard['kind']>(
    kind: Kind, fits: (heard: Extract<Heard, { kind: Kind }>) => boolean = () => true, after = 0,
  ): Promise<Extract<Heard, { kind: Kind }>> {
    for (;;) {
      const found = this.heard.slice(after).find(
        (heard): heard is Extract<Heard, { kind: Kind }> => heard.kind === kind && fits(heard as Extract<Heard, { kind: Kind }>))
      if (found !== undefined) return found
      await Promise.race([
        new Promise<void>((resume) => this.#waiting.push(resume)),
        this.closed.then(({ code }) => { throw new Error(`closed with ${code} while waiting for ${kind}`) }),
      ])
    }
  }

  /** The document as the relay would give it to one who has nothing, after all that this peer said before. */
  async document(): Promise<Y.Doc> {
    const after = this.heard.length
    this.send(syncMessage(0, Y.encodeStateVector(new Y.Doc())))
    const { update } = await this.hear('answer', () => true, after)
    const doc = new Y.Doc()
    Y.applyUpdate(doc, update)
    return doc
  }

  /** The latest state heard of a client id; undefined when none was or it is gone. */
  stateOf(clientId: number): unknown {
    let state: unknown
    for (const heard of this.heard) {
      if (heard.kind === 'presence' && heard.states.has(clientId)) state = heard.states.get(clientId)?.state ?? undefined
    }
    return state
  }
}

/** Joins as a program does, by the Authorization header. */
export async function rawJoin(relay: Pick<TestRelay, 'origin'>, seated: Seated, document = 'plan'): Promise<RawPeer> {
  const peer = new RawPeer(socketUrl(relay, seated.seatId, document), { authorization: `Bearer ${seated.secret}` })
  await peer.opened
  return peer
}

export function socketUrl(relay: Pick<TestRelay, 'origin'>, seatId: string, document: string): string {
  return `${relay.origin.replace(/^http/, 'ws')}/s/${seatId}/${document}`
}

/** step 0 asks, 1 answers, 2 brings an update. */
export function syncMessage(step: 0 | 1 | 2, bytes: Uint8Array): Uint8Array {
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, 0)
  encoding.writeVarUint(encoder, step)
  encoding.writeVarUint8Array(encoder, bytes)
  return encoding.toUint8Array(encoder)
}

export function presenceMessage(...entries: readonly { clientId: number; clock: number; state: unknown }[]): Uint8Array {
  const update = encoding.createEncoder()
  encoding.writeVarUint(update, entries.length)
  for (const { clientId, clock, state } of entries) {
    encoding.writeVarUint(update, clientId)
    encoding.writeVarUint(update, clock)
    encoding.writeVarString(update, typeof state === 'string' ? state : JSON.stringify(state))
  }
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, 1)
  encoding.writeVarUint8Array(encoder, encoding.toUint8Array(update))
  return encoding.toUint8Array(encoder)
}

/** An update that sets one key of the map `m`, as a new client would make it. */
export function updateSetting(key: string, value: unknown): Uint8Array {
  const doc = new Y.Doc()
  doc.getMap('m').set(key, value)
  return Y.encodeStateAsUpdate(doc)
}

function readHeard(data: Uint8Array): Heard {
  const decoder = decoding.createDecoder(data)
  const kind = decoding.readVarUint(decoder)
  if (kind === 0) {
    const step = decoding.readVarUint(decoder)
    const bytes = decoding.readVarUint8Array(decoder)
    return step === 0 ? { kind: 'ask', stateVector: bytes } : { kind: step === 1 ? 'answer' : 'change', update: bytes }
  }
  if (kind === 2 && decoding.readVarUint(decoder) === 0) return { kind: 'denied', reason: decoding.readVarString(decoder) }
  if (kind === 1) return { kind: 'presence', states: readStates(decoding.readVarUint8Array(decoder)) }
  throw new Error(`the relay said something of no known kind: ${kind}`)
}

function readStates(update: Uint8Array): ReadonlyMap<number, { clock: number; state: unknown }> {
  const decoder = decoding.createDecoder(update)
  const states = new Map<number, { clock: number; state: unknown }>()
  for (let left = decoding.readVarUint(decoder); left > 0; left--) {
    const clientId = decoding.readVarUint(decoder)
    const clock = decoding.readVarUint(decoder)
    states.set(clientId, { clock, state: JSON.parse(decoding.readVarString(decoder)) as unknown })
  }
  return states
}
