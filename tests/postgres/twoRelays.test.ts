import { beforeAll, describe, expect, inject, it, onTestFinished } from 'vitest'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { refusalText } from '../../server/relay/refusals.ts'
import { bearer, demoCrew, note, notesOf, outcomes } from '../relay/notesPeople.ts'
import { presenceMessage, rawJoin, syncMessage, updateSetting, type RawPeer } from '../relay/rawPeer.ts'
import { stockJoin } from '../relay/stockClient.ts'
import { until } from '../relay/until.ts'
import { freshDatabase } from './database.ts'
import { openPair, openSharingRelay } from './relayPair.ts'
import { wireCut } from './wireCut.ts'

let url = ''
beforeAll(async () => { url = await freshDatabase(inject('databaseServerUrl')) })

const contents = async (peer: RawPeer) => (await peer.document()).getMap('m').toJSON()

/** The last word of the relay that this peer is on. */
function relayWord(peer: RawPeer): { pen: { seatId: string } | null; notKept: string | null } | undefined {
  for (const heard of [...peer.heard].reverse()) {
    if (heard.kind !== 'presence') continue
    for (const { state } of heard.states.values()) {
      const { relay } = (state ?? {}) as { relay?: { pen: { seatId: string } | null; notKept: string | null } }
      if (relay !== undefined) return relay
    }
  }
  return undefined
}

describe('two relays on one database', () => {
  it('carry edits both ways, and one who comes in on either is given all of them', async () => {
    const [one, other] = await openPair(url)
    const { photographer, assistant, client } = await one.crew()
    const here = await rawJoin(one, photographer)
    const there = await rawJoin(other, assistant)
    await Promise.all([here.document(), there.document()])
    here.send(syncMessage(2, updateSetting('from here', 1)))
    await there.hear('change', ({ update }) => Buffer.from(update).includes('from here'))
    there.send(syncMessage(2, updateSetting('from there', 2)))
    await here.hear('change', ({ update }) => Buffer.from(update).includes('from there'))
    const all = { 'from here': 1, 'from there': 2 }
    for (const relay of [one, other]) expect(await contents(await rawJoin(relay, client))).toEqual(all)
  })

  it('lose nothing when both write to one document at once, and keep it folded', async () => {
    const [one, other] = await openPair(url, { COMPACT_AFTER_UPDATES: 10, MERGE_WINDOW_MS: 0 })
    const { jobId, photographer, assistant } = await one.crew()
    const people = await Promise.all([
      stockJoin(one, photographer.seatId, bearer(photographer)), stockJoin(other, assistant.seatId, bearer(assistant)),
    ])
    for (let count = 0; count < 100; count++) {
      for (const [index, { map }] of people.entries()) map.set(`${index}-${count}`, count)
      if (count % 10 === 9) await new Promise((resolve) => setTimeout(resolve, 5))
    }
    await until(() => people.every(({ map }) => map.size === 200))
    expect(people[0]?.map.toJSON()).toEqual(people[1]?.map.toJSON())
    // In the first pause.
    for (;;) {
      const { updates, lastSequence } = await one.store.readDocument({ jobId, document: 'plan' })
      if (updates.length < lastSequence) break
      await new Promise((resolve) => setTimeout(resolve, 20))
    }
    const late = await openSharingRelay(url)
    expect(Object.keys(await contents(await rawJoin(late, photographer))).length).toBe(200)
  })

  it('give one who comes in what was kept on another that died before it could tell', async () => {
    const [one, other] = await openPair(url)
    const { jobId, photographer, assistant } = await one.crew()
    const here = await rawJoin(one, photographer)
    expect(await contents(here)).toEqual({})
    // Kept, and told to nobody.
    await other.store.append({ jobId, document: 'plan' }, updateSetting('kept', 1))
    expect(await contents(await rawJoin(one, assistant))).toEqual({ kept: 1 })
    await here.hear('change', ({ update }) => Buffer.from(update).includes('kept'))
  })
})

describe('people on two relays', () => {
  it('see one another, however much somebody shows, and see who goes', async () => {
    const [one, other] = await openPair(url)
    const { photographer, assistant } = await one.crew()
    const here = await rawJoin(one, photographer)
    here.send(presenceMessage({ clientId: 11, clock: 1, state: { pointer: 'early' } }))
    await here.hear('presence', ({ states }) => states.has(11))
    const there = await rawJoin(other, assistant)
    await there.hear('presence', ({ states }) => (states.get(11)?.state ?? null) !== null)
    expect(there.stateOf(11)).toEqual({ pointer: 'early', seat: { seatId: photographer.seatId, name: 'Ines', role: 'photographer' } })
    const large = '漢"\\'.repeat(1_100)
    there.send(presenceMessage({ clientId: 22, clock: 1, state: { large } }))
    await here.hear('presence', ({ states }) => states.has(22))
    expect(here.stateOf(22)).toMatchObject({ large, seat: { name: 'Tobin' } })
    here.socket.close()
    await there.hear('presence', ({ states }) => states.get(11)?.state === null)
  })

  it('cannot speak as one who is on the other relay, nor remove them', async () => {
    const [one, other] = await openPair(url)
    const { photographer, assistant, client } = await one.crew()
    const victim = await rawJoin(one, photographer)
    victim.send(presenceMessage({ clientId: 11, clock: 3, state: { pointer: 'mine' } }))
    const attacker = await rawJoin(other, client)
    await attacker.hear('presence', ({ states }) => states.has(11))
    attacker.send(presenceMessage(
      { clientId: 11, clock: 9, state: { pointer: 'stolen' } }, { clientId: 11, clock: 10, state: null }, { clientId: 33, clock: 1, state: {} }))
    const watching = await rawJoin(other, assistant)
    await watching.hear('presence', ({ states }) => states.has(33))
    expect(watching.stateOf(11)).toMatchObject({ pointer: 'mine', seat: { seatId: photographer.seatId } })
    await victim.hear('presence', ({ states }) => states.has(33))
    expect(victim.stateOf(11)).toMatchObject({ pointer: 'mine' })
  })

  it('who move to another relay stay in sight, and those of a relay that is gone do not', async () => {
    const [one, other] = await openPair(url, {}, { hereMs: 50, lostMs: 400 })
    const { photographer, assistant, client } = await one.crew()
    const watching = await rawJoin(other, client)
    const moving = await stockJoin(one, photographer.seatId, bearer(photographer))
    moving.provider.awareness.setLocalState({ pointer: 'moving' })
    const staying = await rawJoin(one, assistant)
    staying.send(presenceMessage({ clientId: 77, clock: 1, state: { pointer: 'staying' } }))
    const { clientID } = moving.doc
    await until(() => watching.stateOf(clientID) !== undefined && watching.stateOf(77) !== undefined)
    // As when its relay is killed: it comes by the other before anybody knows that the first is gone.
    moving.provider.shouldConnect = false
    const moved = await stockJoin(other, photographer.seatId, bearer(photographer), 'plan', moving.doc)
    moved.provider.awareness.setLocalState({ pointer: 'moved' })
    await until(() => JSON.stringify(watching.stateOf(clientID) ?? null).includes('moved'))
    await one.stop()
    await until(() => watching.stateOf(77) === undefined)
    expect(watching.stateOf(clientID)).toMatchObject({ pointer: 'moved' })
  })

  it('are given the pen, and lose it, by a photographer on the other relay', async () => {
    const [one, other] = await openPair(url)
    const { photographer, client } = await one.crew()
    const there = await rawJoin(other, client)
    there.send(syncMessage(2, updateSetting('too early', 1)))
    expect((await there.hear('denied')).reason).toBe(refusalText('no-pen'))
    await one.post(`/s/${photographer.seatId}/pen`, { toSeatId: client.seatId }, bearer(photographer))
    await until(() => relayWord(there)?.pen?.seatId === client.seatId)
    there.send(syncMessage(2, updateSetting('with the pen', 1)))
    await there.hear('change')
    await one.post(`/s/${photographer.seatId}/pen`, { toSeatId: null }, bearer(photographer))
    await until(() => relayWord(there)?.pen === null)
    there.send(syncMessage(2, updateSetting('too late', 1)))
    await there.hear('denied', () => true, there.heard.length)
    expect(await contents(await rawJoin(one, photographer))).toEqual({ 'with the pen': 1 })
  })

  it('have one name', async () => {
    const [one, other] = await openPair(url)
    const { photographer, client } = await one.crew()
    const there = await rawJoin(other, client)
    there.send(presenceMessage({ clientId: 5, clock: 1, state: {} }))
    const here = await rawJoin(one, photographer)
    await until(() => here.stateOf(5) !== undefined)
    await one.post(`/s/${client.seatId}/name`, { name: 'Pella' }, bearer(client))
    await until(() => (here.stateOf(5) as { seat: { name: string } }).seat.name === 'Pella')
  })

  it('are out at once when their link is withdrawn on the other relay, but for who withdrew it', async () => {
    const [one, other] = await openPair(url)
    const { photographer, assistant, client } = await one.crew()
    const [own, helper, guest] = [await rawJoin(other, photographer), await rawJoin(other, assistant), await rawJoin(other, client)]
    await Promise.all([own, helper, guest].map((peer) => peer.document()))
    expect((await one.post(`/s/${photographer.seatId}/links`, { action: 'revoke', role: 'client' }, bearer(photographer))).status).toBe(201)
    expect((await guest.closed).code).toBe(CLOSE_CODES.withdrawn.code)
    expect((await one.post(`/s/${photographer.seatId}/links`, { action: 'revoke', role: 'photographer' }, bearer(photographer))).status).toBe(201)
    expect((await one.post(`/s/${photographer.seatId}/links`, { action: 'revoke', role: 'assistant' }, bearer(photographer))).status).toBe(201)
    expect((await helper.closed).code).toBe(CLOSE_CODES.withdrawn.code)
    expect(await contents(own)).toEqual({})
    const again = await rawJoin(other, client)
    expect((await again.closed).code).toBe(CLOSE_CODES.withdrawn.code)
  })
})

describe('notes on two relays', () => {
  it('said on one are seen on the other', async () => {
    const [one, other] = await openPair(url)
    const { photographer, client } = await demoCrew(one)
    const there = await rawJoin(other, client, 'notes')
    await there.document()
    expect(await outcomes(one, photographer, note('n1', 'warmer'))).toEqual(['ok'])
    await there.hear('change', ({ update }) => Buffer.from(update).includes('warmer'))
  })

  it('said on both at once are all kept, each with a number of its own, and an id is done once', async () => {
    const [one, other] = await openPair(url, { NOTES_PER_MINUTE: 1_000 })
    const { photographer, client } = await demoCrew(one)
    const ids = Array.from({ length: 20 }, (_, index) => `n${index}`)
    const said = await Promise.all(ids.flatMap((id) => [
      outcomes(one, photographer, note(`a-${id}`)), outcomes(other, client, note(`b-${id}`)),
      outcomes(one, photographer, note('same')), outcomes(other, photographer, note('same')),
    ]))
    expect(said.flat()).toEqual(said.map(() => 'ok'))
    const [seenHere, seenThere] = [await notesOf(one, client), await notesOf(other, photographer)]
    expect(seenHere).toEqual(seenThere)
    const stamps = Object.values(seenHere.notes).map((entry) => entry.by.sequence)
    expect(stamps.length).toBe(41)
    expect(new Set(stamps).size).toBe(41)
  })
})

describe('a database that is gone for a while', () => {
  it.each(['ended', 'silent'] as const)('(its wire %s) is told of in words, and all that was done meanwhile lands after', async (how) => {
    const wire = await wireCut(url)
    onTestFinished(() => wire.close())
    const [one, other] = await openPair(wire.url, {}, { hereMs: 50, lostMs: 400 })
    const { photographer, assistant, client } = await one.crew()
    const idle = await rawJoin(other, photographer)
    idle.send(presenceMessage({ clientId: 55, clock: 3, state: { pointer: 'at rest' } }))
    const here = await stockJoin(one, photographer.seatId, bearer(photographer))
    const there = await stockJoin(other, assistant.seatId, bearer(assistant))
    const watching = await rawJoin(one, client)
    here.map.set('before', 1)
    await until(() => there.map.get('before') === 1 && here.provider.awareness.getStates().has(55))
    wire.cut(how)
    here.map.set('here meanwhile', 2)
    there.map.set('there meanwhile', 3)
    await until(() => /database .* cannot be reached/.test(relayWord(watching)?.notKept ?? ''))
    expect((await fetch(`${one.origin}/readyz`)).status).toBe(503)
    here.map.set('here later', 4)
    // Presence goes on, and nobody was sent away.
    const pointer = await rawJoinPresence(watching)
    expect(pointer).toBe(true)
    expect([here.provider.wsconnected, there.provider.wsconnected]).toEqual([true, true])
    await until(() => !here.provider.awareness.getStates().has(55))
    wire.mend()
    const all = { 'before': 1, 'here meanwhile': 2, 'there meanwhile': 3, 'here later': 4 }
    await until(() => [here, there].every(({ map }) => map.size === 4))
    expect([here.map.toJSON(), there.map.toJSON()]).toEqual([all, all])
    await until(() => relayWord(watching)?.notKept === null)
    // Who is on the other relay and does not move is in sight again too.
    await until(() => here.provider.awareness.getStates().has(55))
    expect(await contents(watching)).toEqual(all)
    const late = await openSharingRelay(url)
    expect(await contents(await rawJoin(late, client))).toEqual(all)
  })
})

/** Whether a word of presence comes back to who said it, stamped. */
async function rawJoinPresence(peer: RawPeer): Promise<boolean> {
  peer.send(presenceMessage({ clientId: 99, clock: peer.heard.length + 1, state: { still: 'here' } }))
  await until(() => peer.stateOf(99) !== undefined)
  return true
}
