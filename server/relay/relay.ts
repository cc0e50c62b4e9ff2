import type { IncomingMessage } from 'node:http'
import type { Duplex } from 'node:stream'
import { WebSocketServer, type WebSocket } from 'ws'
import type { Access, AccessListener } from '../access/access.ts'
import { isOwnPage, type OriginRule } from '../access/origin.ts'
import { isDocumentName } from '../access/role.ts'
import type { Pen, Seat } from '../access/seat.ts'
import { secretOfRequest } from '../access/seatCookie.ts'
import type { Log } from '../log.ts'
import type { Neighbours } from '../neighbours/neighbours.ts'
import type { DocumentKey, Store } from '../store/store.ts'
import { StoreError } from '../store/storeError.ts'
import { closeSocket, Connection, stopReadingAfterFault } from './connection.ts'
import type { CloseCause } from './closeCodes.ts'
import type { RelayLimits } from './limits.ts'
import { Elsewhere } from './elsewhere.ts'
import { SeatRates } from './messageRate.ts'
import type { DecideWrite } from './ownWrite.ts'
import type { Room } from './room.ts'
import { Rooms } from './rooms.ts'
import { StoreHealth } from './storeHealth.ts'
import { Tally } from './tally.ts'

export interface RelayParts {
  readonly store: Store
  readonly access: Access
  readonly origin: OriginRule
  readonly limits: RelayLimits
  readonly probeMs: number
  readonly log: Log
  /** Other relays on the same store; null where there can be none. */
  readonly neighbours: Neighbours | null
}

/** Where live connections go: `/s/<seatId>/<document>`, the address a stock provider makes of its two parts. */
const PATH = /^\/s\/([A-Za-z0-9_-]{1,64})\/([a-z]{1,32})$/

/** Lets people's live connections in, into their rooms, and out again. */
export class Relay implements AccessListener {
  readonly health: StoreHealth
  readonly tally = new Tally()
  readonly #parts: RelayParts
  readonly #rooms: Rooms
  readonly #sockets: WebSocketServer
  readonly #connections = new Map<Connection, Room>()
  readonly #seatRates: SeatRates
  /** Revoked since the start: for one who was being let in at that very moment. */
  readonly #revokedLinks = new Set<string>()
  readonly #pinging: NodeJS.Timeout
  readonly #elsewhere: Elsewhere | null
  #isStopping = false

  constructor(parts: RelayParts) {
    this.#parts = parts
    this.health = new StoreHealth(parts.store, parts.probeMs, parts.log)
    const { store, access, neighbours, limits, log } = parts
    this.#rooms = new Rooms({ store, health: this.health, limits, log, tally: this.tally, neighbours })
    this.#sockets = new WebSocketServer({ noServer: true, maxPayload: parts.limits.messageBytes, perMessageDeflate: false })
    this.#seatRates = new SeatRates(parts.limits.bytesPerSecond)
    this.#pinging = setInterval(() => this.#pingAll(), parts.limits.pingMs).unref()
    access.listen(this)
    this.#elsewhere = neighbours === null ? null : new Elsewhere({
      neighbours, store, access, health: this.health, rooms: this.#rooms, log, here: this,
      liveSeats: () => [...this.#connections.keys()].map((connection) => connection.seat),
    })
  }

  /** Opens the line to other relays, where there can be any. @throws StoreError when it does not open. */
  async meetNeighbours(): Promise<void> {
    if (this.#elsewhere !== null) await this.#parts.neighbours?.start(this.#elsewhere)
  }

  get people(): number {
    return this.#connections.size
  }

  /** Whether people may be sent here: not once it is stopping, nor while edits are not kept. */
  get isReady(): boolean {
    return !this.#isStopping && this.health.notKept === null
  }

  get rooms(): number {
    return this.#rooms.count
  }

  /** Takes a request to upgrade. Who is turned away is so with a documented code, which a browser shows its page. */
  handleUpgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    if (this.#isStopping || this.#sockets.clients.size >= this.#parts.limits.connections) {
      socket.on('error', () => { /* They went before they heard it. */ })
      this.tally.refused('connection', this.#isStopping ? 'stopping' : 'tooMany')
      socket.end('HTTP/1.1 503 Service Unavailable\r\nConnection: close\r\nRetry-After: 5\r\n\r\n')
      return
    }
    this.#sockets.handleUpgrade(request, socket, head, (webSocket) => {
      stopReadingAfterFault(webSocket)
      void this.#admit(request, webSocket, socket).catch((thrown: unknown) => {
        this.#parts.log.error('admission failed', { detail: String(thrown) })
        closeSocket(webSocket, 'unreadable')
      })
    })
  }

  /**
   * Writes something of the relay's own into a document, in its turn: decided, kept, then shown to everybody there.
   * Rejects with a StoreError when it cannot be kept; it has not happened then.
   */
  async write(key: DocumentKey, decide: DecideWrite): Promise<void> {
    if (this.#isStopping) throw new StoreError('closed', 'the relay is stopping')
    return this.#rooms.write(key, decide)
  }

  penMoved(jobId: string, pen: Pen): void {
    this.#rooms.penMoved(jobId, pen)
  }

  seatRenamed(seatId: string, name: string): void {
    this.#reseat(seatId, (seat) => ({ ...seat, name }), (connection, room) => room.renamed(connection))
  }

  seatMoved(seatId: string, linkId: string, expiresMs: number): void {
    this.#reseat(seatId, (seat) => ({ ...seat, linkId, expiresMs }), () => {})
  }

  linksRevoked(linkIds: ReadonlySet<string>): void {
    for (const linkId of linkIds) this.#revokedLinks.add(linkId)
    for (const connection of this.#connections.keys()) {
      if (linkIds.has(connection.seat.linkId)) connection.close('withdrawn')
    }
  }

  /** Serves what arrived, keeps it, ends every connection. */
  async stop(): Promise<void> {
    this.#isStopping = true
    clearInterval(this.#pinging)
    await this.#rooms.stop()
    await this.#elsewhere?.stop()
    this.health.stop()
    for (const webSocket of this.#sockets.clients) closeSocket(webSocket, 'stopping')
  }

  async #admit(request: IncomingMessage, webSocket: WebSocket, stream: Duplex): Promise<void> {
    // Nothing is read before it is known who speaks.
    webSocket.pause()
    const found = await this.#seatOfRequest(request)
    webSocket.resume()
    if (webSocket.readyState !== webSocket.OPEN) return
    if (typeof found === 'string') return this.#turnAway(webSocket, found)
    const { seat, document } = found
    if (this.#revokedLinks.has(seat.linkId)) return this.#turnAway(webSocket, 'withdrawn')
    const connection = new Connection(webSocket, stream, seat, this.#parts.limits, this.tally, this.#seatRates.of(seat.seatId))
    const room = this.#rooms.enter({ jobId: seat.jobId, document }, connection)
    if (room === null) return this.#turnAway(webSocket, 'roomFull')
    this.#connections.set(connection, room)
    webSocket.on('message', (data: Buffer, isBinary: boolean) => this.#hear(connection, room, data, isBinary))
    webSocket.on('close', (code) => this.#left(connection, room, code))
    this.#parts.log.debug('came in', { seatId: seat.seatId, role: seat.role, jobId: seat.jobId, document })
  }

  async #seatOfRequest(request: IncomingMessage) {
    const [, seatId, document] = PATH.exec((request.url ?? '').split('?', 1)[0] ?? '') ?? []
    if (!isOwnPage(request.headers, this.#parts.origin)) return 'foreignOrigin' as const
    if (seatId === undefined || document === undefined || !isDocumentName(document)) return 'noDocument' as const
    const seat = await this.#parts.access.admit(seatId, secretOfRequest(request.headers))
    if (typeof seat === 'string') return seat
    return this.#connectionsOf(seatId) >= this.#parts.limits.connectionsPerSeat ? ('roomFull' as const) : { seat, document }
  }

  #hear(connection: Connection, room: Room, data: Buffer, isBinary: boolean): void {
    this.tally.messages += 1
    this.tally.receivedBytes += data.byteLength
    if (!connection.mayBeHeard(data.byteLength)) return connection.close('tooFast')
    if (!isBinary) return connection.close('badFrame')
    try {
      room.hear(connection, data)
    } catch (thrown) {
      this.#parts.log.error('message not served', { detail: thrown instanceof Error ? String(thrown.stack) : String(thrown) })
      connection.close('fault')
    }
  }

  #left(connection: Connection, room: Room, code: number): void {
    this.#connections.delete(connection)
    room.leave(connection)
    this.#parts.log.debug('went', { seatId: connection.seat.seatId, code, cause: connection.endedFor ?? 'own wish or lost' })
  }

  #turnAway(webSocket: WebSocket, cause: CloseCause): void {
    this.#parts.log.info('turned away', { cause })
    this.tally.refused('connection', cause)
    closeSocket(webSocket, cause)
  }

  #reseat(seatId: string, change: (seat: Seat) => Seat, after: (connection: Connection, room: Room) => void): void {
    for (const [connection, room] of this.#connections) {
      if (connection.seat.seatId !== seatId) continue
      connection.seat = change(connection.seat)
      after(connection, room)
    }
  }

  #connectionsOf(seatId: string): number {
    return [...this.#connections.keys()].filter((connection) => connection.seat.seatId === seatId).length
  }

  #pingAll(): void {
    const nowMs = Date.now()
    this.#seatRates.forgetRested(performance.now())
    for (const connection of this.#connections.keys()) {
      if (nowMs >= connection.seat.expiresMs) connection.close('expired')
      else if (!connection.answeredPing) connection.cutOff()
      else connection.ping()
    }
  }
}
