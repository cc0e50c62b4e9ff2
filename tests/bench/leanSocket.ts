import { randomBytes } from 'node:crypto'
import { connect, type Socket } from 'node:net'

/** The rest of a message, text, bytes. */
const LAST_DATA_OPCODE = 2
const CLOSE = 8
const NOTHING: Buffer = Buffer.alloc(0)
const PING = 9

/** What comes is read before the next does: all sockets read into the same bytes, so that nothing has to be tidied up. */
const ARRIVED = Buffer.alloc(65_536)

/**
 * A WebSocket client (RFC 6455) of as little work as can be, so that a hundred people fit in one process without being
 * slower than the server they measure. It masks with zeros, which leaves the payload as it is, and trusts the server.
 */
export class LeanSocket {
  readonly opened: Promise<void>
  /** A message stands in the bytes between two places; they are good until it returns. */
  onMessage: (bytes: Buffer, from: number, to: number) => void = () => {}
  readonly #socket: Socket
  #rest = NOTHING
  #isOpen = false

  constructor(url: string, headers: Readonly<Record<string, string>>) {
    const { hostname, port, pathname } = new URL(url)
    let opened = (): void => {}
    let refused: (error: Error) => void = () => {}
    const onread = {
      buffer: ARRIVED,
      callback: (bytes: number) => {
        this.#read(bytes, opened, refused)
        return true
      },
    }
    this.#socket = connect({ port: Number(port), host: hostname, onread })
    this.#socket.setNoDelay(true)
    this.opened = new Promise((resolve, reject) => {
      // After it opened, a connection lost shows as edits that did not arrive.
      this.#socket.on('error', reject)
      this.#socket.once('close', () => reject(new Error('closed before it opened')))
      opened = resolve
      refused = reject
    })
    this.opened.catch(() => {})
    const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`).join('')
    this.#socket.write(`GET ${pathname} HTTP/1.1\r\nHost: ${hostname}:${port}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n` +
      `Sec-WebSocket-Version: 13\r\nSec-WebSocket-Key: ${randomBytes(16).toString('base64')}\r\n${lines}\r\n`)
  }

  send(message: Uint8Array): void {
    this.#write(0x82, message)
  }

  /** Reads nothing more, as a device that fell asleep. */
  pause(): void {
    this.#socket.pause()
  }

  leave(): void {
    this.#socket.destroy()
  }

  #write(firstByte: number, payload: Uint8Array): void {
    const { byteLength } = payload
    const lengthBytes = byteLength < 126 ? 0 : byteLength < 65_536 ? 2 : 8
    const frame = Buffer.alloc(2 + lengthBytes + 4 + byteLength)
    frame[0] = firstByte
    frame[1] = 0x80 | (lengthBytes === 0 ? byteLength : lengthBytes === 2 ? 126 : 127)
    if (lengthBytes === 2) frame.writeUInt16BE(byteLength, 2)
    if (lengthBytes === 8) frame.writeBigUInt64BE(BigInt(byteLength), 2)
    frame.set(payload, 2 + lengthBytes + 4)
    this.#socket.write(frame)
  }

  /** Makes nothing where whole frames arrive: a hundred people read forty thousand a second. */
  #read(arrivedBytes: number, opened: () => void, refused: (error: Error) => void): void {
    const isRest = this.#rest.length > 0
    const bytes = isRest ? Buffer.concat([this.#rest, ARRIVED.subarray(0, arrivedBytes)]) : ARRIVED
    const upTo = isRest ? bytes.length : arrivedBytes
    const from = this.#isOpen ? 0 : this.#open(bytes.subarray(0, upTo), opened, refused)
    const at = from === null ? 0 : this.#takeWhole(bytes, from, upTo)
    this.#rest = at === upTo ? NOTHING : Buffer.from(bytes.subarray(at, upTo))
  }

  /** Where the frames begin; null while the answer to the handshake is not whole, or where it is a refusal. */
  #open(bytes: Buffer, opened: () => void, refused: (error: Error) => void): number | null {
    const end = bytes.indexOf('\r\n\r\n')
    if (end < 0) return null
    const status = bytes.toString('latin1', 0, bytes.indexOf('\r\n'))
    if (!status.includes(' 101 ')) {
      refused(new Error(status))
      return null
    }
    this.#isOpen = true
    opened()
    return end + 4
  }

  #takeWhole(bytes: Buffer, from: number, upTo: number): number {
    let at = from
    for (let end = frameEnd(bytes, at, upTo); end !== null; end = frameEnd(bytes, at, upTo)) {
      this.#take(bytes, at, end)
      at = end
    }
    return at
  }

  #take(bytes: Buffer, at: number, end: number): void {
    const opcode = (bytes[at] ?? 0) & 15
    const from = at + headerBytes(bytes, at)
    if (opcode <= LAST_DATA_OPCODE) this.onMessage(bytes, from, end)
    if (opcode === PING) this.#write(0x8a, bytes.subarray(from, end))
    if (opcode === CLOSE) this.#socket.end()
  }
}

function headerBytes(bytes: Buffer, at: number): number {
  const length = (bytes[at + 1] ?? 0) & 127
  return length < 126 ? 2 : length === 126 ? 4 : 10
}

/** Where the frame that begins there ends; null while some of it is missing from the bytes up to there. */
function frameEnd(bytes: Buffer, at: number, upTo: number): number | null {
  if (upTo < at + 2) return null
  const header = headerBytes(bytes, at)
  if (upTo < at + header) return null
  const payload = header === 2 ? (bytes[at + 1] ?? 0) & 127
    : header === 4 ? bytes.readUInt16BE(at + 2) : Number(bytes.readBigUInt64BE(at + 2))
  const end = at + header + payload
  return end <= upTo ? end : null
}
