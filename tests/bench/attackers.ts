/**
 * The attacker's side of `attacks.ts`, in a process of its own so that its work is not taken for the relay's. Places come
 * as JSON by stdin, the kind of attack as the first argument; it goes on until it is ended.
 */
import { randomBytes } from 'node:crypto'
import { connect, type Socket } from 'node:net'
import { text } from 'node:stream/consumers'
import * as Y from 'yjs'
import { LeanSocket } from './leanSocket.ts'
import { presenceMessage, syncMessage } from './person.ts'
import type { Place } from './servers.ts'

const kind = process.argv[2] ?? ''
const places = JSON.parse(await text(process.stdin)) as { url: string; headers: Record<string, string> }[]
const connectionsAPlace = Number(process.argv[3] ?? 1)

function rawSocket({ url }: Pick<Place, 'url'>): Socket {
  const socket = connect(Number(new URL(url).port), '127.0.0.1')
  socket.on('error', () => {})
  return socket
}

function upgrade({ url, headers }: Pick<Place, 'url' | 'headers'>): string {
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`).join('')
  return `GET ${new URL(url).pathname} HTTP/1.1\r\nHost: 127.0.0.1\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n` +
    `Sec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n${lines}\r\n`
}

/** Joins, does its worst, and comes back for more once turned out. */
function again(place: (typeof places)[number], attack: (socket: LeanSocket) => NodeJS.Timeout | undefined): void {
  const socket = new LeanSocket(place.url, place.headers)
  socket.opened.then(() => {
    const timer = attack(socket)
    setTimeout(() => {
      clearInterval(timer)
      socket.leave()
      again(place, attack)
    }, 500)
  }, () => setTimeout(() => again(place, attack), 100))
}

function fiftyMegabytes(place: (typeof places)[number]): void {
  const socket = rawSocket(place)
  const header = Buffer.alloc(14)
  header[0] = 0x82
  header[1] = 0x80 | 127
  header.writeBigUInt64BE(50_000_000n, 2)
  socket.write(Buffer.concat([Buffer.from(upgrade(place)), header]))
  const piece = Buffer.alloc(1_000_000, 7)
  let pieces = 0
  const timer = setInterval(() => {
    if (socket.destroyed || pieces++ >= 50) {
      clearInterval(timer)
      socket.destroy()
      return void setTimeout(() => fiftyMegabytes(place), 100)
    }
    socket.write(piece)
  }, 10)
}

/** One struct a letter: never two beside one another, so that no two can be joined. */
function tinyPieces(): Uint8Array {
  const doc = new Y.Doc()
  doc.transact(() => { for (let count = 0; count < 20_000; count++) doc.getText('t').insert(Math.floor(count / 2), 'x') })
  return Y.encodeStateAsUpdate(doc)
}

let clock = 0
switch (kind) {
  case 'random bytes':
    for (const place of places) again(place, (socket) => setInterval(() => socket.send(randomBytes(2_000)), 20))
    break
  case 'fifty megabytes':
    places.forEach(fiftyMegabytes)
    break
  case 'presence flood':
    for (const place of places) again(place, (socket) => setInterval(() => {
      socket.send(presenceMessage(7, ++clock, JSON.stringify({ filling: 'x'.repeat(7_000) })))
    }, 4))
    break
  case 'idle sockets':
    for (const place of places) for (let count = 0; count < connectionsAPlace; count++) void new LeanSocket(place.url, place.headers).opened.catch(() => {})
    break
  case 'deaf readers':
    for (const place of places) {
      const socket = rawSocket(place)
      socket.write(upgrade(place))
      socket.pause()
    }
    break
  case 'half-open handshakes':
    for (const place of places) for (let count = 0; count < connectionsAPlace; count++) rawSocket(place).write(upgrade(place).slice(0, 20 + (count % 150)))
    break
  case 'document bomb': {
    const bomb = syncMessage(2, tinyPieces())
    for (const place of places) again(place, (socket) => setInterval(() => socket.send(bomb), 100))
    break
  }
  default: throw new Error(`no such attack: ${kind}`)
}
setInterval(() => {}, 1_000)
