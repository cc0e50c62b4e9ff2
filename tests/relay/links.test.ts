import { describe, expect, it } from 'vitest'
import { Access } from '../../server/access/access.ts'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { MemoryStore } from '../../server/store/memoryStore.ts'
import { openRelay, type Seated, type TestRelay } from './openRelay.ts'
import { rawJoin, RawPeer, socketUrl } from './rawPeer.ts'

const DAY_MS = 86_400_000
const bearer = (seated: Seated) => ({ authorization: `Bearer ${seated.secret}` })

async function problem(response: Response): Promise<[number, string]> {
  return [response.status, ((await response.json()) as { code: string }).code]
}

function links(relay: TestRelay, seated: Seated, body: unknown): Promise<Response> {
  return relay.post(`/s/${seated.seatId}/links`, body, bearer(seated))
}

interface Listed {
  readonly linkId: string
  readonly role: string
  readonly state: string
  readonly createdMs: number
  readonly expiresMs: number
  readonly people: readonly { readonly name: string; readonly cameMs: number }[]
}

async function linksListed(relay: TestRelay, seated: Seated): Promise<readonly Listed[]> {
  return ((await (await links(relay, seated, { action: 'list' })).json()) as { links: Listed[] }).links
}

const keyOf = (url: string) => url.slice(url.indexOf('#') + 1)

describe('a link’s key', () => {
  it('is a fresh secret of at least 128 bits for every role and job, told once and kept only as a hash', async () => {
    const store = new MemoryStore()
    const relay = await openRelay({}, store)
    const started = await relay.post('/api/jobs', {})
    const { jobId, links: made } = (await started.json()) as { jobId: string; links: { role: string; url: string }[] }
    const other = await relay.newJob()
    const keys = [...made.map(({ url }) => keyOf(url)), ...Object.values(other.keys)]
    expect(made.map(({ role }) => role)).toEqual(['photographer', 'assistant', 'client'])
    for (const { url } of made) expect(url).toMatch(new RegExp(`^${relay.origin}/j/${jobId}#[A-Za-z0-9_-]+$`))
    expect(new Set(keys).size).toBe(6)
    for (const key of keys) expect(Buffer.from(key, 'base64url').byteLength * 8).toBeGreaterThanOrEqual(128)
    const kept = JSON.stringify(await store.linksOf(jobId), (_name, value: unknown) =>
      value instanceof Uint8Array ? Buffer.from(value).toString('base64url') : value)
    for (const key of keys) expect(kept).not.toContain(key)
  })

  it('seats its own role at its own job and nothing else', async () => {
    const relay = await openRelay()
    const { jobId, keys } = await relay.newJob()
    const other = await relay.newJob()
    expect((await relay.seat(jobId, keys.assistant, 'Tobin')).role).toBe('assistant')
    const wrong = { name: 'X', headless: true }
    for (const body of [
      { jobId, key: 'A'.repeat(24), ...wrong }, { jobId: other.jobId, key: keys.photographer, ...wrong },
      { jobId: 'nowhere', key: keys.photographer, ...wrong }, { jobId, key: keys.photographer.slice(0, -1), ...wrong },
    ]) {
      // A wrong key and an unknown job answer alike: nobody learns which jobs exist.
      expect(await problem(await relay.post('/api/seats', body))).toEqual([403, 'wrong-key'])
    }
  })

  it('tried wrongly too often from one address is not looked at any more', async () => {
    const relay = await openRelay({ WRONG_KEYS_PER_MINUTE: 3 })
    const { jobId, keys } = await relay.newJob()
    const tryKey = (key: string) => relay.post('/api/seats', { jobId, key, name: 'X', headless: true })
    for (let count = 0; count < 3; count++) expect((await tryKey('wrong')).status).toBe(403)
    expect(await problem(await tryKey('wrong'))).toEqual([429, 'too-many-tries'])
    expect((await tryKey(keys.client)).status).toBe(429)
  })

  it('stands in no log, and no more does a name or a seat’s secret', async () => {
    const relay = await openRelay()
    const { jobId, keys, photographer, client } = await relay.crew()
    await relay.post('/api/seats', { jobId, key: 'wrong-key-here', name: 'Nobody Known', headless: true })
    const peer = await rawJoin(relay, client)
    await peer.document()
    await relay.post(`/s/${client.seatId}/name`, { name: 'Renamed Person' }, bearer(client))
    await relay.post(`/s/${photographer.seatId}/pen`, { toSeatId: client.seatId }, bearer(photographer))
    await links(relay, photographer, { action: 'revoke', role: 'client' })
    await peer.closed
    const log = relay.logLines.join('\n')
    expect(relay.logLines.length).toBeGreaterThan(5)
    for (const secret of [...Object.values(keys), photographer.secret, client.secret, 'wrong-key-here', 'Nobody Known', 'Renamed Person', 'Ines', 'Pell']) {
      expect(log).not.toContain(secret)
    }
  })
})

describe('a link that ran out', () => {
  it('seats nobody, and those it seated are out', async () => {
    let nowMs = Date.now()
    const store = new MemoryStore()
    const access = new Access(store, { linkLifetimeMs: 10 * DAY_MS, seatsPerLink: 10 }, () => nowMs)
    const relay = await openRelay({}, store, { access })
    const { jobId, keys, client } = await relay.crew()
    nowMs += 11 * DAY_MS
    expect(await problem(await relay.post('/api/seats', { jobId, key: keys.client, name: 'Late' }))).toEqual([403, 'expired'])
    const me = await fetch(`${relay.origin}/s/${client.seatId}/me`, { headers: bearer(client) })
    expect(await problem(me)).toEqual([403, 'expired'])
    const peer = new RawPeer(socketUrl(relay, client.seatId, 'plan'), bearer(client))
    expect(await peer.closed).toEqual({ code: CLOSE_CODES.expired.code, reason: CLOSE_CODES.expired.words })
  })

  it('ends live connections too', async () => {
    const store = new MemoryStore()
    const access = new Access(store, { linkLifetimeMs: 1_000, seatsPerLink: 10 })
    const relay = await openRelay({ PING_MS: 100 }, store, { access })
    const { client } = await relay.crew()
    const peer = await rawJoin(relay, client)
    expect((await peer.closed).code).toBe(CLOSE_CODES.expired.code)
  })
})

describe('a photographer', () => {
  it('revokes a role’s links: everybody in by them is out at once, nobody else is', async () => {
    const relay = await openRelay()
    const { jobId, keys, photographer, assistant, client } = await relay.crew()
    const out = [await rawJoin(relay, client), await rawJoin(relay, client, 'rig')]
    const stays = [await rawJoin(relay, photographer), await rawJoin(relay, assistant)]
    const answer = await links(relay, photographer, { action: 'revoke', role: 'client' })
    for (const peer of out) expect((await peer.closed).code).toBe(CLOSE_CODES.withdrawn.code)
    for (const peer of stays) await peer.document()
    expect(await problem(await relay.post('/api/seats', { jobId, key: keys.client, name: 'Pell' }))).toEqual([403, 'withdrawn'])
    const again = new RawPeer(socketUrl(relay, client.seatId, 'plan'), bearer(client))
    expect((await again.closed).code).toBe(CLOSE_CODES.withdrawn.code)
    expect((await fetch(`${relay.origin}/s/${client.seatId}/me`, { headers: bearer(client) })).status).toBe(403)
    const { role, url } = (await answer.json()) as { role: string; url: string }
    expect(role).toBe('client')
    expect((await relay.seat(jobId, keyOf(url), 'Saskia')).role).toBe('client')
  })

  it('gets the pen back when the link of who holds it is revoked', async () => {
    const relay = await openRelay()
    const { jobId, photographer, client } = await relay.crew()
    await relay.post(`/s/${photographer.seatId}/pen`, { toSeatId: client.seatId }, bearer(photographer))
    expect(await relay.access.penOf(jobId)).toEqual({ seatId: client.seatId, name: 'Pell' })
    await links(relay, photographer, { action: 'revoke', role: 'client' })
    expect(await relay.access.penOf(jobId)).toBeNull()
  })

  it('does not shut themselves out by revoking the photographer’s own link', async () => {
    const relay = await openRelay()
    const { jobId, keys, photographer } = await relay.crew()
    const second = await relay.seat(jobId, keys.photographer, 'Second')
    const [own, other] = [await rawJoin(relay, photographer), await rawJoin(relay, second)]
    await links(relay, photographer, { action: 'revoke', role: 'photographer' })
    expect((await other.closed).code).toBe(CLOSE_CODES.withdrawn.code)
    await own.document()
    await (await rawJoin(relay, photographer, 'rig')).document()
    expect((await links(relay, photographer, { action: 'revoke', role: 'photographer' })).status).toBe(201)
    await own.document()
  })

  it('renews a link: the old one seats nobody new, those it seated stay', async () => {
    const relay = await openRelay()
    const { jobId, keys, photographer, client } = await relay.crew()
    const peer = await rawJoin(relay, client)
    const { url } = (await (await links(relay, photographer, { role: 'client' })).json()) as { url: string }
    expect(await problem(await relay.post('/api/seats', { jobId, key: keys.client, name: 'Late' }))).toEqual([403, 'withdrawn'])
    await relay.seat(jobId, keyOf(url), 'Saskia')
    await peer.document()
    const listed = (await (await links(relay, photographer, { action: 'list' })).json()) as { links: Record<string, unknown>[] }
    expect(listed.links.map(({ role, state, seats }) => [role, state, seats])).toEqual([
      ['photographer', 'open', 1], ['assistant', 'open', 1], ['client', 'closed', 1], ['client', 'open', 1],
    ])
    expect(JSON.stringify(listed)).not.toContain('ash')
  })

  it('reads who came in by each link and when, and no key', async () => {
    const relay = await openRelay()
    const { jobId, keys, photographer } = await relay.crew()
    const fromMs = Date.now()
    await relay.seat(jobId, keys.client, 'Saskia')
    const listed = await linksListed(relay, photographer)
    const client = listed.find(({ role }) => role === 'client')!
    expect(client.people.map(({ name }) => name)).toEqual(['Pell', 'Saskia'])
    expect(client.people[1]!.cameMs).toBeGreaterThanOrEqual(fromMs)
    expect(client.people[1]!.cameMs).toBeLessThanOrEqual(Date.now())
    for (const key of Object.values(keys)) expect(JSON.stringify(listed)).not.toContain(key)
  })

  it('withdraws one link: who came by it is out at once with the pen, who came by another of the same role stays', async () => {
    const relay = await openRelay()
    const { jobId, keys, photographer, client } = await relay.crew()
    const { url } = (await (await links(relay, photographer, { role: 'client' })).json()) as { url: string }
    const other = await relay.seat(jobId, keyOf(url), 'Saskia')
    await relay.post(`/s/${photographer.seatId}/pen`, { toSeatId: client.seatId }, bearer(photographer))
    const [out, stays] = [await rawJoin(relay, client), await rawJoin(relay, other)]
    const first = (await linksListed(relay, photographer)).find(({ people }) => people.some(({ name }) => name === 'Pell'))!
    const answer = await links(relay, photographer, { action: 'withdraw', linkId: first.linkId })
    expect(answer.status).toBe(200)
    expect(await out.closed).toEqual({ code: CLOSE_CODES.withdrawn.code, reason: CLOSE_CODES.withdrawn.words })
    expect(await relay.access.penOf(jobId)).toBeNull()
    expect(await problem(await relay.post('/api/seats', { jobId, key: keys.client, name: 'Again' }))).toEqual([403, 'withdrawn'])
    await stays.document()
    await (await rawJoin(relay, other, 'rig')).document()
    const { links: left } = (await answer.json()) as { links: Listed[] }
    expect(left.filter(({ role }) => role === 'client').map(({ state }) => state)).toEqual(['revoked', 'open'])
  })

  it('withdraws neither a link of another job nor the one they came by', async () => {
    const relay = await openRelay()
    const [{ photographer }, elsewhere] = [await relay.crew(), await relay.crew()]
    const [foreign] = await linksListed(relay, elsewhere.photographer)
    expect(await problem(await links(relay, photographer, { action: 'withdraw', linkId: foreign!.linkId }))).toEqual([404, 'no-such-link'])
    const own = (await linksListed(relay, photographer)).find(({ role }) => role === 'photographer')!
    expect(await problem(await links(relay, photographer, { action: 'withdraw', linkId: own.linkId }))).toEqual([409, 'own-link'])
    await (await rawJoin(relay, photographer)).document()
    await (await rawJoin(relay, elsewhere.photographer)).document()
  })

  it('says how many days a link is good, up to what the relay allows', async () => {
    let nowMs = Date.now()
    const store = new MemoryStore()
    const access = new Access(store, { linkLifetimeMs: 10 * DAY_MS, seatsPerLink: 10 }, () => nowMs)
    const relay = await openRelay({}, store, { access })
    const { jobId, photographer } = await relay.crew()
    const made = async (days?: number) => {
      const answer = await links(relay, photographer, { role: 'client', ...(days === undefined ? {} : { days }) })
      return ((await answer.json()) as { url: string }).url
    }
    const [short, long, usual] = [await made(2), await made(400), await made()]
    const spans = (await linksListed(relay, photographer)).slice(-3).map(({ createdMs, expiresMs }) => (expiresMs - createdMs) / DAY_MS)
    expect(spans).toEqual([2, 10, 10])
    for (const days of [0, -1, 1.5, 1e9]) expect((await links(relay, photographer, { role: 'client', days })).status).toBe(400)
    nowMs += 3 * DAY_MS
    expect(await problem(await relay.post('/api/seats', { jobId, key: keyOf(short), name: 'Late' }))).toEqual([403, 'expired'])
    await relay.seat(jobId, keyOf(usual), 'In time')
    expect(long).not.toBe(usual)
  })

  it.each(['assistant', 'client'] as const)('alone does so: the %s is refused', async (role) => {
    const relay = await openRelay()
    const crew = await relay.crew()
    for (const body of [{ action: 'list' }, { action: 'withdraw', linkId: 'any' }, { action: 'revoke', role: 'client' }, { role: 'photographer' }]) {
      expect(await problem(await links(relay, crew[role], body))).toEqual([403, 'only-photographer'])
    }
  })
})

describe('a link', () => {
  it('seats only so many', async () => {
    const relay = await openRelay({ SEATS_PER_LINK: 2 })
    const { jobId, keys } = await relay.newJob()
    await relay.seat(jobId, keys.client, 'One')
    await relay.seat(jobId, keys.client, 'Two')
    expect(await problem(await relay.post('/api/seats', { jobId, key: keys.client, name: 'Three' }))).toEqual([409, 'too-many-seats'])
  })
})
