import { describe, expect, it } from 'vitest'
import { messageAuth } from 'y-websocket'
import * as Y from 'yjs'
import { refusalText } from '../../server/relay/refusals.ts'
import { openRelay, type Seated, type TestRelay } from './openRelay.ts'
import { rawJoin, syncMessage, updateSetting, type RawPeer } from './rawPeer.ts'
import { stockJoin } from './stockClient.ts'
import { until } from './until.ts'

const bearer = (seated: Seated) => ({ authorization: `Bearer ${seated.secret}` })

function movePen(relay: TestRelay, mover: Seated, toSeatId: string | null): Promise<Response> {
  return relay.post(`/s/${mover.seatId}/pen`, { toSeatId }, bearer(mover))
}

async function contentOf(peer: RawPeer): Promise<unknown> {
  return (await peer.document()).getMap('m').toJSON()
}

describe('who may write', () => {
  it.each(['photographer', 'assistant'] as const)('%s writes plan and rig', async (role) => {
    const relay = await openRelay()
    const crew = await relay.crew()
    for (const document of ['plan', 'rig']) {
      const peer = await rawJoin(relay, crew[role], document)
      peer.send(syncMessage(2, updateSetting(role, 1)))
      expect(await contentOf(peer)).toEqual({ [role]: 1 })
    }
  })

  it.each([1, 2] as const)('a client without the pen is refused by the relay itself, told, and nothing is applied (sync step %i)', async (step) => {
    const relay = await openRelay()
    const { jobId, client, photographer } = await relay.crew()
    const looking = await rawJoin(relay, client)
    const working = await rawJoin(relay, photographer)
    looking.send(syncMessage(step, updateSetting('forged', true)))
    expect((await looking.hear('denied')).reason).toBe(refusalText('no-pen'))
    working.send(syncMessage(2, updateSetting('real', true)))
    expect(await contentOf(working)).toEqual({ real: true })
    expect(await contentOf(looking)).toEqual({ real: true })
    const kept = new Y.Doc()
    for (const update of (await relay.store.readDocument({ jobId, document: 'plan' })).updates) Y.applyUpdate(kept, update)
    expect(kept.getMap('m').toJSON()).toEqual({ real: true })
  })

  it.each(['photographer', 'assistant', 'client'] as const)('nobody writes notes over sync, not even the %s', async (role) => {
    const relay = await openRelay()
    const crew = await relay.crew()
    const peer = await rawJoin(relay, crew[role], 'notes')
    peer.send(syncMessage(2, updateSetting('note', 'as somebody else')))
    expect((await peer.hear('denied')).reason).toBe(refusalText('relay-only'))
    expect(await contentOf(peer)).toEqual({})
  })

  it('does not call the empty answer that every join sends a refused edit', async () => {
    const relay = await openRelay()
    const { client } = await relay.crew()
    const looking = await rawJoin(relay, client)
    looking.send(syncMessage(1, Y.encodeStateAsUpdate(new Y.Doc())))
    await looking.document()
    expect(looking.heard.filter((heard) => heard.kind === 'denied')).toEqual([])
  })

  it('asks only those who may write for what it does not have', async () => {
    const relay = await openRelay()
    const { client, assistant } = await relay.crew()
    const looking = await rawJoin(relay, client)
    await looking.document()
    await looking.document()
    expect(looking.heard.filter((heard) => heard.kind === 'ask')).toEqual([])
    const working = await rawJoin(relay, assistant)
    await working.document()
    await working.hear('ask')
  })
})

describe('the pen', () => {
  it('lets a client write while they hold it, and no longer once it is taken back', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const peer = await rawJoin(relay, client)
    expect((await movePen(relay, photographer, client.seatId)).status).toBe(200)
    peer.send(syncMessage(2, updateSetting('with the pen', 1)))
    expect(await contentOf(peer)).toEqual({ 'with the pen': 1 })
    expect((await movePen(relay, photographer, null)).status).toBe(200)
    peer.send(syncMessage(2, updateSetting('without', 2)))
    expect((await peer.hear('denied')).reason).toBe(refusalText('no-pen'))
    expect(await contentOf(peer)).toEqual({ 'with the pen': 1 })
  })

  it('does not take the photographer’s and the assistant’s right to write', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    await movePen(relay, photographer, client.seatId)
    const peers = [await rawJoin(relay, photographer), await rawJoin(relay, assistant)] as const
    peers[0].send(syncMessage(2, updateSetting('p', 1)))
    expect(await contentOf(peers[0])).toEqual({ p: 1 })
    peers[1].send(syncMessage(2, updateSetting('a', 1)))
    expect(await contentOf(peers[1])).toEqual({ p: 1, a: 1 })
  })

  it('is with one client at a time', async () => {
    const relay = await openRelay()
    const { jobId, keys, photographer, client } = await relay.crew()
    const second = await relay.seat(jobId, keys.client, 'Saskia')
    await movePen(relay, photographer, client.seatId)
    await movePen(relay, photographer, second.seatId)
    const peer = await rawJoin(relay, client)
    peer.send(syncMessage(2, updateSetting('late', 1)))
    expect((await peer.hear('denied')).reason).toBe(refusalText('no-pen'))
  })

  it('is handed over by the photographer alone, and given back by whoever holds it', async () => {
    const relay = await openRelay()
    const { jobId, keys, photographer, assistant, client } = await relay.crew()
    const second = await relay.seat(jobId, keys.client, 'Saskia')
    for (const forger of [assistant, client]) {
      const answer = await movePen(relay, forger, client.seatId)
      expect([answer.status, ((await answer.json()) as { code: string }).code]).toEqual([403, 'only-photographer'])
    }
    await movePen(relay, photographer, client.seatId)
    expect((await movePen(relay, client, second.seatId)).status).toBe(403)
    expect((await movePen(relay, second, null)).status).toBe(403)
    expect((await movePen(relay, client, null)).status).toBe(200)
    expect(await relay.access.penOf(jobId)).toBeNull()
  })

  it('goes to no seat of another job, no assistant, and nobody unknown', async () => {
    const relay = await openRelay()
    const { photographer, assistant } = await relay.crew()
    const elsewhere = await relay.crew()
    for (const seatId of [elsewhere.client.seatId, elsewhere.photographer.seatId, assistant.seatId, 'nobody']) {
      expect((await movePen(relay, photographer, seatId)).status).toBe(404)
    }
  })

  it('is told to everybody in the relay’s own presence entry, which survives a reopened room', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const looking = await rawJoin(relay, client)
    await movePen(relay, photographer, client.seatId)
    const tellsPen = (peer: RawPeer) => peer.hear('presence', ({ states }) => [...states.values()].some(
      ({ state }) => (state as { relay?: { pen: unknown } } | null)?.relay?.pen !== null &&
        JSON.stringify(state).includes(client.seatId) && 'relay' in (state as object)))
    await tellsPen(looking)
    await tellsPen(await rawJoin(relay, photographer, 'rig'))
  })

  it('lets a stock client land what was refused before it had the pen', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const holder = await stockJoin(relay, client.seatId, bearer(client))
    const watching = await stockJoin(relay, photographer.seatId, bearer(photographer))
    let refusals = 0
    holder.provider.messageHandlers[messageAuth] = () => { refusals += 1 }
    holder.map.set('before', 1)
    await until(() => refusals === 1)
    await movePen(relay, photographer, client.seatId)
    await until(() => watching.map.get('before') === 1)
    holder.map.set('after', 2)
    await until(() => watching.map.get('after') === 2)
    expect(watching.map.toJSON()).toEqual({ before: 1, after: 2 })
  })
})

describe('a name', () => {
  it('can be changed by its owner, and the stamp on their presence changes with it', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const named = await stockJoin(relay, client.seatId, bearer(client))
    const seeing = await stockJoin(relay, photographer.seatId, bearer(photographer))
    const stamp = () => seeing.provider.awareness.getStates().get(named.doc.clientID)?.seat as { name: string } | undefined
    await until(() => stamp()?.name === 'Pell')
    const answer = await relay.post(`/s/${client.seatId}/name`, { name: ' Pell Oduya ' }, bearer(client))
    expect(await answer.json()).toMatchObject({ name: 'Pell Oduya' })
    await until(() => stamp()?.name === 'Pell Oduya')
    const me = await fetch(`${relay.origin}/s/${client.seatId}/me`, { headers: bearer(client) })
    expect(await me.json()).toMatchObject({ name: 'Pell Oduya', role: 'client' })
  })

  it.each(['', '   ', 'a\u202eb', 'line\nbreak', 'x'.repeat(121)])('is refused as %j', async (name) => {
    const relay = await openRelay()
    const { client } = await relay.crew()
    expect((await relay.post(`/s/${client.seatId}/name`, { name }, bearer(client))).status).toBe(400)
  })
})
