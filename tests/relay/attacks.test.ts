import fc from 'fast-check'
import { connect } from 'node:net'
import { randomBytes } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { readFrame } from '../../server/relay/frames.ts'
import { refusalText } from '../../server/relay/refusals.ts'
import { isUpdate } from '../../server/relay/sharedDocument.ts'
import { openRelay, type Seated, type TestRelay } from './openRelay.ts'
import { presenceMessage, rawJoin, RawPeer, socketUrl, syncMessage, updateSetting } from './rawPeer.ts'
import { until } from './until.ts'

const bearer = (seated: Seated) => ({ authorization: `Bearer ${seated.secret}` })

/** The bystander is still there, hears a new edit, and the document holds just what honest people wrote. */
async function expectUnharmed(relay: TestRelay, bystander: RawPeer, worker: Seated): Promise<void> {
  const working = await rawJoin(relay, worker)
  working.send(syncMessage(2, updateSetting('honest', 1)))
  await bystander.hear('change')
  expect((await bystander.document()).getMap('m').toJSON()).toEqual({ honest: 1 })
}

describe('coming in', () => {
  it.each([
    ['a wrong secret', { authorization: `Bearer ${'A'.repeat(24)}` }],
    ['no secret', {}],
    ['a secret in no known form', { authorization: 'Basic abc' }],
    ['a wrong cookie', { cookie: 'halfstop_seat=nope' }],
  ])('is refused with %s', async (_name, headers) => {
    const relay = await openRelay()
    const { photographer } = await relay.crew()
    const peer = new RawPeer(socketUrl(relay, photographer.seatId, 'plan'), headers as Record<string, string>)
    expect(await peer.closed).toEqual({ code: CLOSE_CODES.noSeat.code, reason: CLOSE_CODES.noSeat.words })
    expect(peer.heard).toEqual([])
  })

  it('is refused at another person’s seat, whatever one’s own', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const peer = new RawPeer(socketUrl(relay, photographer.seatId, 'plan'), bearer(client))
    expect((await peer.closed).code).toBe(CLOSE_CODES.noSeat.code)
  })

  it.each([
    ['a page of another site', { origin: 'https://elsewhere.example' }],
    ['a page of another port of this machine', { origin: 'http://127.0.0.1:1' }],
    ['a page without an origin of its own', { origin: 'null' }],
    ['a foreign name led to this machine', { host: 'rebound.example:80', origin: 'http://rebound.example:80' }],
    ['a browser that says the page is of another site', { 'sec-fetch-site': 'cross-site' }],
  ])('is refused to %s, even with a good secret', async (_name, headers) => {
    const relay = await openRelay()
    const { photographer } = await relay.crew()
    const peer = new RawPeer(socketUrl(relay, photographer.seatId, 'plan'), { ...bearer(photographer), ...headers } as Record<string, string>)
    expect((await peer.closed).code).toBe(CLOSE_CODES.foreignOrigin.code)
    expect(peer.heard).toEqual([])
  })

  it('is refused to a document that is none', async () => {
    const relay = await openRelay()
    const { photographer } = await relay.crew()
    for (const document of ['secrets', 'plan/rig', '__proto__', 'tostring', 'PLAN', '']) {
      const peer = new RawPeer(socketUrl(relay, photographer.seatId, document), bearer(photographer))
      expect((await peer.closed).code).toBe(CLOSE_CODES.noDocument.code)
    }
  })

  it('is refused to more people than a room takes; those inside stay', async () => {
    const relay = await openRelay({ MAX_PEOPLE_PER_ROOM: 2 })
    const { photographer, assistant, client } = await relay.crew()
    const inside = [await rawJoin(relay, photographer), await rawJoin(relay, client)]
    await Promise.all(inside.map((peer) => peer.document()))
    const late = new RawPeer(socketUrl(relay, assistant.seatId, 'plan'), bearer(assistant))
    expect((await late.closed).code).toBe(CLOSE_CODES.roomFull.code)
    for (const peer of inside) await peer.document()
  })

  it('is refused to one seat with more connections than a person needs', async () => {
    const relay = await openRelay({ MAX_CONNECTIONS_PER_SEAT: 3 })
    const { client } = await relay.crew()
    for (let count = 0; count < 3; count++) await (await rawJoin(relay, client)).document()
    const fourth = new RawPeer(socketUrl(relay, client.seatId, 'plan'), bearer(client))
    expect((await fourth.closed).code).toBe(CLOSE_CODES.roomFull.code)
  })

  it('is refused before a handshake once the relay has all the connections it takes', async () => {
    const relay = await openRelay({ MAX_CONNECTIONS: 1 })
    const { client, photographer } = await relay.crew()
    const inside = await rawJoin(relay, client)
    const late = new RawPeer(socketUrl(relay, photographer.seatId, 'plan'), bearer(photographer))
    await expect(late.opened).rejects.toThrow('503')
    await inside.document()
  })

  it('survives handshakes that are broken off or never finished', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const port = Number(new URL(relay.origin).port)
    for (const said of [
      `GET /s/${photographer.seatId}/plan HTTP/1.1\r\nHost: 127.0.0.1\r\nUpgrade: websocket\r\n`,
      `GET /s/${photographer.seatId}/plan HTTP/1.1\r\nHost: 127.0.0.1\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n\r\n`,
      'GET / HTTP/9.9\r\n\r\n', '\0\0\0\0', 'GET http://[ HTTP/1.1\r\nHost: [\r\n\r\n',
      'GET //%00/../../etc/passwd HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n',
    ]) {
      const socket = connect(port, '127.0.0.1', () => socket.write(said))
      socket.on('error', () => {})
      await new Promise<void>((resolve) => {
        socket.once('data', () => resolve())
        socket.once('close', () => resolve())
        setTimeout(resolve, 100)
      })
      socket.destroy()
    }
    await expectUnharmed(relay, bystander, photographer)
  })
})

describe('bytes that are no message', () => {
  it('never make the reader throw', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      const frame = readFrame(bytes)
      if (frame?.kind === 'change') isUpdate(frame.update)
    }), { numRuns: 3_000 })
  })

  it('of every kind end the connection with the documented code and nobody else’s', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const good = updateSetting('x', 'y'.repeat(50))
    const bad: Uint8Array[] = [
      new Uint8Array(0), new Uint8Array([9]), new Uint8Array([0, 7]), new Uint8Array([2, 0, 1, 65]), new Uint8Array(64).fill(255),
      randomBytes(3_000).fill(0xff, 0, 10),
      syncMessage(2, randomBytes(500)), syncMessage(2, good.slice(0, good.length - 3)), syncMessage(1, new Uint8Array([1, 255, 255, 255, 255, 7])),
      syncMessage(0, new Uint8Array([200])), new Uint8Array([0, 2, 250, 1]),
      new Uint8Array([1, 200, 1]), presenceMessage({ clientId: 5, clock: 1, state: '{broken' }), presenceMessage({ clientId: 5, clock: 1, state: 7 }),
      presenceMessage({ clientId: 5, clock: 1, state: [] }),
    ]
    for (const bytes of bad) {
      const attacker = await rawJoin(relay, assistant)
      attacker.send(bytes)
      expect({ bytes: Array.from(bytes.slice(0, 8)), code: (await attacker.closed).code })
        .toEqual({ bytes: Array.from(bytes.slice(0, 8)), code: CLOSE_CODES.badFrame.code })
    }
    const text = await rawJoin(relay, assistant)
    text.socket.send('hello')
    expect((await text.closed).code).toBe(CLOSE_CODES.badFrame.code)
    await expectUnharmed(relay, bystander, photographer)
  })

  it('at random, many of them, harm nobody', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    for (let round = 0; round < 40; round++) {
      const attacker = await rawJoin(relay, assistant)
      const noise = randomBytes(1 + Math.floor(Math.random() * 2_000))
      // Half of them claim to be sync updates, so that the noise reaches deeper.
      attacker.send(round % 2 === 0 ? noise : syncMessage(2, noise))
      attacker.socket.close()
      await attacker.closed
    }
    await expectUnharmed(relay, bystander, photographer)
  })

  it('that decode but cannot be put into the document turn out the sender and spoil nothing sent beside them', async () => {
    expect(isUpdate(BREAKING_UPDATE)).toBe(true)
    expect(() => Y.applyUpdate(new Y.Doc(), BREAKING_UPDATE)).toThrow()
    const relay = await openRelay({ MERGE_WINDOW_MS: 500 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const working = await rawJoin(relay, photographer)
    const attacker = await rawJoin(relay, assistant)
    await attacker.document()
    // The first edit goes out at once and opens the window in which the next two wait together.
    working.send(syncMessage(2, updateSetting('first', 1)))
    const before = bystander.heard.indexOf(await bystander.hear('change'))
    attacker.send(syncMessage(2, BREAKING_UPDATE))
    working.send(syncMessage(2, updateSetting('honest', 1)))
    await bystander.hear('change', () => true, before + 1)
    expect((await attacker.closed).code).toBe(CLOSE_CODES.badFrame.code)
    expect((await bystander.document()).getMap('m').toJSON()).toEqual({ first: 1, honest: 1 })
  })
})

describe('too much', () => {
  it('in one message ends the connection with 1009, others unharmed', async () => {
    const relay = await openRelay({ MAX_MESSAGE_BYTES: 10_000 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant)
    attacker.send(syncMessage(2, updateSetting('x', 'y'.repeat(20_000))))
    expect((await attacker.closed).code).toBe(CLOSE_CODES.tooLarge.code)
    await expectUnharmed(relay, bystander, photographer)
  })

  it('presence is refused in words and not passed on', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, photographer)
    attacker.send(presenceMessage({ clientId: 77, clock: 1, state: { big: 'x'.repeat(9_000) } }))
    expect((await attacker.hear('denied')).reason).toBe(refusalText('presence-too-large'))
    attacker.send(presenceMessage({ clientId: 77, clock: 2, state: { small: true } }))
    await bystander.hear('presence', ({ states }) => states.has(77))
    expect(bystander.heard.some((heard) => heard.kind === 'presence' && JSON.stringify([...heard.states]).includes('xxx'))).toBe(false)
  })

  it('for a document is refused in words, and what was there stays', async () => {
    const relay = await openRelay({ MAX_DOCUMENT_BYTES: 20_000 })
    const { photographer } = await relay.crew()
    const peer = await rawJoin(relay, photographer)
    const doc = new Y.Doc()
    doc.on('update', (update: Uint8Array) => peer.send(syncMessage(2, update)))
    for (let count = 0; count < 5; count++) {
      doc.getMap('m').set(`k${count}`, randomBytes(8_000).toString('base64').slice(0, 8_000))
      await peer.document()
    }
    expect((await peer.hear('denied')).reason).toBe(refusalText('document-full'))
    expect([...(await peer.document()).getMap('m').keys()].sort()).toEqual(['k0', 'k1', 'k2'])
  })

  it('at once ends the connection of a flood, others unharmed', async () => {
    const relay = await openRelay({ MESSAGES_PER_SECOND: 10 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant)
    for (let count = 0; count < 400; count++) attacker.send(new Uint8Array([3]))
    expect((await attacker.closed).code).toBe(CLOSE_CODES.tooFast.code)
    await expectUnharmed(relay, bystander, photographer)
  })

  it('waiting for one who never reads drops that one alone', async () => {
    const relay = await openRelay({ MAX_BUFFERED_BYTES: 100_000 })
    const { photographer, assistant, client } = await relay.crew()
    const reading = await rawJoin(relay, client)
    const deaf = await rawJoin(relay, assistant)
    deaf.socket.pause()
    const working = await rawJoin(relay, photographer)
    const doc = new Y.Doc()
    doc.on('update', (update: Uint8Array) => working.send(syncMessage(2, update)))
    const isDropped = () => relay.logLines.some((line) => line.includes(' went ') && line.includes(assistant.seatId) && line.includes('slowReader'))
    for (let count = 0; !isDropped() && count < 400; count++) {
      doc.getMap('m').set('big', randomBytes(75_000).toString('base64'))
      await working.document()
    }
    await until(isDropped)
    expect((await reading.document()).getMap('m').get('big')).toBe(doc.getMap('m').get('big'))
  })

  it('that rests on edits which never arrive is told so and not kept', async () => {
    const relay = await openRelay()
    const { jobId, photographer } = await relay.crew()
    const peer = await rawJoin(relay, photographer)
    const doc = new Y.Doc()
    doc.getMap('m').set('first', 1)
    const before = Y.encodeStateVector(doc)
    doc.getMap('m').set('second', 2)
    const resting = Y.encodeStateAsUpdate(doc, before)
    peer.send(syncMessage(2, resting))
    await peer.hear('ask')
    peer.send(syncMessage(2, resting))
    expect((await peer.hear('denied')).reason).toBe(refusalText('incomplete'))
    expect((await relay.store.readDocument({ jobId, document: 'plan' })).updates).toEqual([])
    peer.send(syncMessage(1, Y.encodeStateAsUpdate(doc)))
    expect((await peer.document()).getMap('m').toJSON()).toEqual({ first: 1, second: 2 })
  })
})

describe('presence', () => {
  it('cannot be forged: neither another’s seat, nor another’s state, nor the relay’s word', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const watching = await rawJoin(relay, assistant)
    const victim = await rawJoin(relay, photographer)
    victim.send(presenceMessage({ clientId: 100, clock: 5, state: { pointer: 'mine' } }))
    await watching.hear('presence', ({ states }) => states.has(100))
    const attacker = await rawJoin(relay, client)
    const [relayId] = [...(await attacker.hear('presence')).states.keys()] as [number]
    attacker.send(presenceMessage(
      { clientId: 100, clock: 90, state: { pointer: 'stolen' } },
      { clientId: relayId, clock: 1_000_000, state: { relay: { pen: { seatId: client.seatId, name: 'Pell' }, notKept: null } } },
      { clientId: 200, clock: 1, state: { seat: { seatId: photographer.seatId, name: 'Ines', role: 'photographer' }, relay: { notKept: 'lies' } } },
    ))
    await watching.hear('presence', ({ states }) => states.has(200))
    expect(watching.stateOf(200)).toEqual({ seat: { seatId: client.seatId, name: 'Pell', role: 'client' } })
    expect(watching.stateOf(100)).toMatchObject({ pointer: 'mine', seat: { seatId: photographer.seatId } })
    expect(watching.stateOf(relayId)).toEqual({ relay: { pen: null, notKept: null } })
  })

  it('of others cannot be removed, not even after they went and with a late echo', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const watching = await rawJoin(relay, assistant)
    const victim = await rawJoin(relay, photographer)
    const attacker = await rawJoin(relay, client)
    victim.send(presenceMessage({ clientId: 100, clock: 5, state: { here: true } }))
    await watching.hear('presence', ({ states }) => states.has(100))
    attacker.send(presenceMessage({ clientId: 100, clock: 5, state: null }, { clientId: 100, clock: 6, state: null }, { clientId: 300, clock: 1, state: {} }))
    await watching.hear('presence', ({ states }) => states.has(300))
    expect(watching.stateOf(100)).toMatchObject({ here: true })
    victim.socket.close()
    await watching.hear('presence', ({ states }) => states.get(100)?.state === null)
    attacker.send(presenceMessage({ clientId: 100, clock: 7, state: { ghost: true } }, { clientId: 300, clock: 2, state: { again: true } }))
    await watching.hear('presence', ({ states }) => states.get(300)?.clock === 2)
    expect(watching.stateOf(100)).toBeUndefined()
  })

  it('of one connection is a few entries, not a crowd', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const watching = await rawJoin(relay, photographer)
    const attacker = await rawJoin(relay, client)
    attacker.send(presenceMessage(...Array.from({ length: 500 }, (_, index) => ({ clientId: 1_000 + index, clock: 1, state: {} }))))
    const { states } = await watching.hear('presence', (heard) => heard.states.has(1_000))
    expect(states.size).toBeLessThanOrEqual(5)
  })

  it('nested too deep to be written again ends the connection, others unharmed', async () => {
    const relay = await openRelay({ MAX_PRESENCE_BYTES: 1_000_000 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant)
    attacker.send(presenceMessage({ clientId: 5, clock: 1, state: `{"a":${'['.repeat(200_000)}${']'.repeat(200_000)}}` }))
    expect((await attacker.closed).code).toBe(CLOSE_CODES.badFrame.code)
    await expectUnharmed(relay, bystander, photographer)
  })
})

/**
 * An update of a map with a text and a list in it, as Yjs 13.6 writes it, with one byte changed: it decodes from end to
 * end, and Yjs throws when it puts it into a document.
 */
const BREAKING_UPDATE = Buffer.from(
  '010901002101016d0106012701016d0174020100010101840102026263c4010201030278782762016d03617272000800' +
  '0107017d018101080188010901760101617d01010103000102010903', 'hex')
