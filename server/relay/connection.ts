import type { Duplex } from 'node:stream'
import type { WebSocket } from 'ws'
import type { Seat } from '../access/seat.ts'
import { CLOSE_CODES, type CloseCause } from './closeCodes.ts'
import { deniedFrame } from './frames.ts'
import type { RelayLimits } from './limits.ts'
import { MessageRate } from './messageRate.ts'
import { refusalText, type Refusal } from './refusals.ts'
import type { Tally } from './tally.ts'

/** A closing handshake that the other side does not answer is cut short after this. */
const CLOSE_GRACE_MS = 2_000
/** From these nothing more is read: they go on sending as long as somebody reads. They still hear why they are sent off. */
const UNHEARD: ReadonlySet<CloseCause> = new Set<CloseCause>(['tooFast', 'slowReader', 'tooLarge'])
const UNHEARD_GRACE_MS = 300

/** One live connection of a seat to one document. */
export class Connection {
  /** Replaced when the person changes their name. */
  seat: Seat
  /** While the relay waits for edits that this one's edits rest on. */
  isAskedForMissing = false
  /** False from a ping until its answer. */
  answeredPing = true
  /** Why the relay ended it; null while it has not. */
  endedFor: CloseCause | null = null
  readonly #socket: WebSocket
  /** What the WebSocket runs on; whole frames go straight to it. */
  readonly #stream: Duplex
  readonly #rate: MessageRate
  /** Shared by all connections of the seat: bytes. */
  readonly #seatRate: MessageRate
  readonly #maxBufferedBytes: number
  readonly #tally: Tally
  /** A whole document may wait for its reader on top of the limit: it was asked for. */
  #answerBytes = 0

  constructor(socket: WebSocket, stream: Duplex, seat: Seat, limits: RelayLimits, tally: Tally, seatRate: MessageRate) {
    this.#socket = socket
    this.#stream = stream
    this.seat = seat
    this.#rate = new MessageRate(limits.messagesPerSecond, performance.now())
    this.#maxBufferedBytes = limits.bufferedBytes
    this.#tally = tally
    this.#seatRate = seatRate
    socket.on('pong', () => { this.answeredPing = true })
  }

  /** Counts one incoming message against the pace allowed. */
  mayBeHeard(bytes: number): boolean {
    const nowMs = performance.now()
    return this.#rate.take(nowMs) && this.#seatRate.take(nowMs, bytes)
  }

  get isOpen(): boolean {
    return this.#socket.readyState === this.#socket.OPEN
  }

  /** Whether so much is waiting already that presence would come too late to be worth anything. */
  get isLagging(): boolean {
    return this.#stream.writableLength > this.#maxBufferedBytes / 4
  }

  /** Sends, or drops a reader for whom too much is waiting already. So many of the bytes may be presence. */
  send(frame: Buffer, presenceBytes = 0, whenSent?: () => void): void {
    if (!this.isOpen) return
    this.#tally.sentBytes.presence += presenceBytes
    const waitingBytes = this.#stream.writableLength
    if (waitingBytes > this.#maxBufferedBytes + this.#answerBytes) return this.close('slowReader')
    if (waitingBytes === 0) this.#answerBytes = 0
    this.#stream.write(frame, whenSent)
  }

  /** Sends what this one asked for, however large. @param whenSent called once it has left, or the connection is gone */
  answer(frame: Buffer, whenSent?: () => void): void {
    this.send(frame, 0, whenSent)
    this.#answerBytes += frame.byteLength
    this.#tally.sentBytes.documents += frame.byteLength
  }

  /** Presence is worth nothing late: one who lags is spared it until the wait is over. */
  sendPresence(frame: Buffer): void {
    if (!this.isOpen || this.isLagging) return
    this.#tally.sentBytes.presence += frame.byteLength
    this.#stream.write(frame)
  }

  refuse(refusal: Refusal): void {
    this.#tally.refused('edit', refusal)
    this.send(deniedFrame(refusalText(refusal)))
  }

  ping(): void {
    this.answeredPing = false
    this.#socket.ping()
  }

  close(cause: CloseCause): void {
    if (this.endedFor === null) this.#tally.refused('connection', cause)
    this.endedFor ??= cause
    closeSocket(this.#socket, cause)
  }

  /** For one that no longer answers: there is nobody to say goodbye to. */
  cutOff(): void {
    this.#socket.terminate()
  }
}

/** The socket library sends the code of a fault in the frames by itself, but reads on and throws away until all has come. */
export function stopReadingAfterFault(socket: WebSocket): void {
  socket.on('error', () => {
    // Only after the library has told the stream to go on.
    setImmediate(() => socket.pause())
    setTimeout(() => socket.terminate(), UNHEARD_GRACE_MS).unref()
  })
}

/** Ends a socket with its documented code; cut off if the other side does not take note. */
export function closeSocket(socket: WebSocket, cause: CloseCause): void {
  if (socket.readyState !== socket.OPEN) return
  const { code, words } = CLOSE_CODES[cause]
  socket.close(code, words)
  const isUnheard = UNHEARD.has(cause)
  if (isUnheard) socket.pause()
  const timer = setTimeout(() => socket.terminate(), isUnheard ? UNHEARD_GRACE_MS : CLOSE_GRACE_MS)
  timer.unref()
  socket.once('close', () => clearTimeout(timer))
}
