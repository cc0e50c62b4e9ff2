import { connect, type Socket } from 'node:net'
import { describe, expect, it, onTestFinished } from 'vitest'
import * as Y from 'yjs'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { refusalText } from '../../server/relay/refusals.ts'
import { openRelay, type Seated, type TestRelay } from './openRelay.ts'
import { presenceMessage, rawJoin, syncMessage, updateSetting } from './rawPeer.ts'
import { expectUnharmed } from './unharmed.ts'
import { until } from './until.ts'

const IDLE_SOCKETS = 400
const HALF_OPEN = 200

/** A socket without any library: it says what it likes, whether or not it is a WebSocket's turn to. */
function rawSocket(relay: TestRelay): Socket {
  const socket = connect(Number(new URL(relay.origin).port), '127.0.0.1')
  socket.on('error', () => {})
  onTestFinished(() => { socket.destroy() })
  return socket
}

function handshake(seated: Seated): string {
  return `GET /s/${seated.seatId}/plan HTTP/1.1\r\nHost: 127.0.0.1\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n` +
    `Sec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\nAuthorization: Bearer ${seated.secret}\r\n\r\n`
}

/** The code of the close frame (RFC 6455, section 5.5.1) among the whole frames that came; null when there is none. */
function closeCode(heard: Buffer): number | null {
  for (let at = 0; at + 2 <= heard.length;) {
    const short = heard[at + 1]! & 127
    const start = at + (short < 126 ? 2 : short === 126 ? 4 : 10)
    if (start > heard.length) return null
    const length = short < 126 ? short : short === 126 ? heard.readUInt16BE(at + 2) : Number(heard.readBigUInt64BE(at + 2))
    if (heard[at] === 0x88) return start + 2 <= heard.length ? heard.readUInt16BE(start) : null
    at = start + length
  }
  return null
}

describe('fifty megabytes', () => {
  it('are refused at their first bytes, and others go on', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = rawSocket(relay)
    let heard = Buffer.alloc(0)
    attacker.on('data', (chunk) => { heard = Buffer.concat([heard, chunk]) })
    attacker.write(handshake(assistant))
    await until(() => heard.includes('101 Switching Protocols'))
    const header = Buffer.alloc(14)
    header[0] = 0x82
    header[1] = 0x80 | 127
    header.writeBigUInt64BE(50_000_000n, 2)
    attacker.write(header)
    const piece = Buffer.alloc(1_000_000, 7)
    let sentBytes = 0
    const gone = new Promise<void>((resolve) => attacker.once('close', () => resolve()))
    while (sentBytes < 50_000_000 && !attacker.destroyed && closeCode(heard.subarray(heard.indexOf('\r\n\r\n') + 4)) === null) {
      attacker.write(piece)
      sentBytes += piece.byteLength
      await new Promise((resolve) => setTimeout(resolve, 5))
    }
    expect(closeCode(heard.subarray(heard.indexOf('\r\n\r\n') + 4))).toBe(CLOSE_CODES.tooLarge.code)
    expect(sentBytes).toBeLessThan(50_000_000)
    await gone
    await expectUnharmed(relay, bystander, photographer)
  })
})

describe('presence', () => {
  it('of the largest size as fast as may be reaches others at a bounded rate, latest state only', async () => {
    const relay = await openRelay({ PRESENCE_WINDOW_MS: 100, BYTES_PER_SECOND: 100_000_000 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant)
    await attacker.document()
    const startedMs = performance.now()
    for (let clock = 1; clock <= 1_000; clock++) {
      attacker.send(presenceMessage({ clientId: 7, clock, state: { clock, filling: 'x'.repeat(7_000) } }))
    }
    await bystander.hear('presence', ({ states }) => states.get(7)?.clock === 1_000)
    const windows = (performance.now() - startedMs) / 100
    const heard = bystander.heard.filter((one) => one.kind === 'presence' && one.states.has(7)).length
    expect(heard).toBeLessThanOrEqual(windows + 3)
    expect(bystander.stateOf(7)).toMatchObject({ clock: 1_000, seat: { seatId: assistant.seatId } })
    await expectUnharmed(relay, bystander, photographer)
  })
})

describe('crowds of sockets', () => {
  it(`that only sit there (${IDLE_SOCKETS}) leave the others as they were`, { timeout: 60_000 }, async () => {
    const relay = await openRelay({ MAX_PEOPLE_PER_ROOM: IDLE_SOCKETS + 10 })
    const { jobId, keys, photographer, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const seats: Seated[] = []
    for (let count = 0; count < IDLE_SOCKETS / 20; count++) seats.push(await relay.seat(jobId, keys.client, `Idle ${count}`))
    let opened = 0
    for (const seat of seats.flatMap((each) => Array.from({ length: 20 }, () => each))) {
      const socket = rawSocket(relay)
      socket.once('data', () => { opened += 1 })
      socket.write(handshake(seat))
    }
    await until(() => opened === IDLE_SOCKETS)
    await expectUnharmed(relay, bystander, photographer)
  })

  it(`that never finish their handshake (${HALF_OPEN}) keep nobody out`, async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    for (let count = 0; count < HALF_OPEN; count++) rawSocket(relay).write(handshake(client).slice(0, 20 + (count % 150)))
    const bystander = await rawJoin(relay, client)
    await expectUnharmed(relay, bystander, photographer)
  })

  it('that never read, five of them, are dropped one and all, and the reader beside them has everything', { timeout: 60_000 }, async () => {
    const relay = await openRelay({ MAX_BUFFERED_BYTES: 100_000, BYTES_PER_SECOND: 100_000_000 })
    const { photographer, assistant, client } = await relay.crew()
    const reading = await rawJoin(relay, client)
    for (let count = 0; count < 5; count++) (await rawJoin(relay, assistant)).socket.pause()
    const working = await rawJoin(relay, photographer)
    const doc = new Y.Doc()
    doc.on('update', (update: Uint8Array) => working.send(syncMessage(2, update)))
    const dropped = () => relay.logLines.filter((line) => line.includes('"went"') && line.includes('slowReader')).length
    for (let count = 0; dropped() < 5 && count < 300; count++) {
      doc.getMap('m').set('big', `${count} `.repeat(40_000).slice(0, 90_000))
      await working.document()
    }
    await until(() => dropped() === 5)
    expect((await reading.document()).getMap('m').get('big')).toBe(doc.getMap('m').get('big'))
  })
})

describe('a document bomb', () => {
  it('a megabyte at a time is too much for one seat, which gets no more by coming back', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant, 'rig')
    for (let count = 0; count < 4; count++) attacker.send(syncMessage(2, updateSetting(`k${count}`, 'y'.repeat(900_000))))
    expect((await attacker.closed).code).toBe(CLOSE_CODES.tooFast.code)
    const again = await rawJoin(relay, assistant, 'rig')
    again.send(syncMessage(2, updateSetting('again', 'y'.repeat(900_000))))
    expect((await again.closed).code).toBe(CLOSE_CODES.tooFast.code)
    await expectUnharmed(relay, bystander, photographer)
  })

  it('of very many tiny pieces is taken within its limits, and refused once the document is as large as may be', { timeout: 60_000 }, async () => {
    const relay = await openRelay({ MAX_DOCUMENT_BYTES: 300_000 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant)
    for (let round = 0; round < 4; round++) {
      const doc = new Y.Doc()
      // Never two beside one another, so that no two can be joined: one struct for each letter.
      doc.transact(() => { for (let count = 0; count < 15_000; count++) doc.getText('t').insert(Math.floor(count / 2), 'x') })
      attacker.send(syncMessage(2, Y.encodeStateAsUpdate(doc)))
      await attacker.document()
    }
    expect((await attacker.hear('denied')).reason).toBe(refusalText('document-full'))
    const other = await rawJoin(relay, photographer, 'rig')
    other.send(syncMessage(2, updateSetting('honest', 1)))
    expect((await (await rawJoin(relay, photographer, 'rig')).document()).getMap('m').toJSON()).toEqual({ honest: 1 })
    expect((await bystander.document()).getText('t').length).toBeGreaterThan(0)
  })

  it('nested so deep that taking it out runs out of stack turns out its sender and leaves the document as it is kept', { timeout: 60_000 }, async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant)
    const doc = new Y.Doc()
    let map = doc.getMap<unknown>('m')
    doc.transact(() => {
      for (let depth = 0; depth < 30_000; depth++) {
        const inner = new Y.Map<unknown>()
        map.set('a', inner)
        map = inner
      }
    })
    attacker.send(syncMessage(2, Y.encodeStateAsUpdate(doc)))
    await attacker.document()
    const removal = removalOfOutermost(doc)
    expect(() => Y.applyUpdate(doc, removal)).toThrow(RangeError)
    attacker.send(syncMessage(2, removal))
    expect((await attacker.closed).code).toBe(CLOSE_CODES.badFrame.code)
    const working = await rawJoin(relay, photographer)
    working.send(syncMessage(2, updateSetting('honest', 1)))
    await bystander.hear('change', ({ update }) => Buffer.from(update).includes('honest'))
    const kept = await bystander.document()
    expect(kept.getMap('m').get('honest')).toBe(1)
    expect((await fetch(`${relay.origin}/healthz`)).status).toBe(200)
    // And the room can be left and opened again.
    const stored = new Y.Doc()
    for (const update of (await relay.store.readDocument({ jobId: photographer.jobId, document: 'plan' })).updates) Y.applyUpdate(stored, update)
    expect(Y.encodeStateVector(stored)).toEqual(Y.encodeStateVector(kept))
  })

  it('of huge strings is refused by size, whole or in pieces', { timeout: 60_000 }, async () => {
    const relay = await openRelay({ MAX_DOCUMENT_BYTES: 3_000_000, BYTES_PER_SECOND: 100_000_000 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client, 'rig')
    const whole = await rawJoin(relay, assistant)
    whole.send(syncMessage(2, updateSetting('x', 'y'.repeat(2_000_000))))
    expect((await whole.closed).code).toBe(CLOSE_CODES.tooLarge.code)
    const inPieces = await rawJoin(relay, assistant)
    for (let count = 0; count < 6; count++) inPieces.send(syncMessage(2, updateSetting(`k${count}`, 'y'.repeat(900_000))))
    expect((await inPieces.hear('denied')).reason).toBe(refusalText('document-full'))
    const { updates } = await relay.store.readDocument({ jobId: photographer.jobId, document: 'plan' })
    expect(updates.reduce((total, update) => total + update.byteLength, 0)).toBeLessThan(3_000_000 + 1_000_000)
    const working = await rawJoin(relay, photographer, 'rig')
    working.send(syncMessage(2, updateSetting('honest', 1)))
    await bystander.hear('change')
  })
})

/** An update that takes out the outermost of nested maps, written by hand: Yjs itself would run out of stack making it. */
function removalOfOutermost(doc: Y.Doc): Uint8Array {
  const clientId = doc.clientID
  // No structs; one client; one deletion: clock 0, length 1 (Yjs update format 1).
  const bytes: number[] = [0, 1]
  for (let left = clientId; ; left = Math.floor(left / 128)) {
    bytes.push(left >= 128 ? (left % 128) + 128 : left)
    if (left < 128) break
  }
  return Uint8Array.from([...bytes, 1, 0, 1])
}
