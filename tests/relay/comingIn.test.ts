import { connect } from 'node:net'
import { describe, expect, it } from 'vitest'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { openRelay, type Seated } from './openRelay.ts'
import { rawJoin, RawPeer, socketUrl } from './rawPeer.ts'
import { expectUnharmed } from './unharmed.ts'

const bearer = (seated: Seated) => ({ authorization: `Bearer ${seated.secret}` })

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
    ['a foreign name led to this machine', { host: 'rebound.example:4200', origin: 'http://rebound.example:4200' }],
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
