import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { MemoryStore } from '../../server/store/memoryStore.ts'
import type { DocumentKey } from '../../server/store/store.ts'
import { openRelay, type Seated, type TestRelay } from './openRelay.ts'
import { stockJoin } from './stockClient.ts'
import { until } from './until.ts'

const bearer = (seated: Seated) => ({ authorization: `Bearer ${seated.secret}` })

/** Takes a seat as a browser does and gives the cookie as the browser would send it back. */
async function seatWithCookie(relay: TestRelay, jobId: string, key: string, name: string) {
  const response = await relay.post('/api/seats', { jobId, key, name }, { origin: relay.origin })
  const { seatId } = (await response.json()) as { seatId: string }
  const [setCookie] = response.headers.getSetCookie()
  return { seatId, setCookie: String(setCookie), cookie: String(setCookie).split(';', 1)[0] as string }
}

describe('a stock y-websocket provider', () => {
  it('joins with a cookie as a page does, and with a header as a program does, and both see each other edit', async () => {
    const relay = await openRelay()
    const { jobId, keys } = await relay.newJob()
    const page = await seatWithCookie(relay, jobId, keys.photographer, 'Ines')
    const program = await relay.seat(jobId, keys.assistant, 'Tobin')
    const first = await stockJoin(relay, page.seatId, { cookie: page.cookie, origin: relay.origin })
    const second = await stockJoin(relay, program.seatId, bearer(program))
    first.map.set('from page', 1)
    second.map.set('from program', 2)
    const both = { 'from page': 1, 'from program': 2 }
    await until(() => Object.keys(first.map.toJSON()).length === 2 && Object.keys(second.map.toJSON()).length === 2)
    expect(first.map.toJSON()).toEqual(both)
    expect(second.map.toJSON()).toEqual(both)
  })

  it('brings along what it wrote while away', async () => {
    const relay = await openRelay()
    const { photographer, assistant } = await relay.crew()
    const doc = new Y.Doc()
    doc.getMap('m').set('offline', true)
    await stockJoin(relay, photographer.seatId, bearer(photographer), 'plan', doc)
    const other = await stockJoin(relay, assistant.seatId, bearer(assistant))
    await until(() => other.map.get('offline') === true)
  })

  it('finds another document in `rig` than in `plan`', async () => {
    const relay = await openRelay()
    const { photographer } = await relay.crew()
    const plan = await stockJoin(relay, photographer.seatId, bearer(photographer), 'plan')
    const rig = await stockJoin(relay, photographer.seatId, bearer(photographer), 'rig')
    plan.map.set('a', 1)
    rig.map.set('b', 2)
    const planAgain = await stockJoin(relay, photographer.seatId, bearer(photographer), 'plan')
    await until(() => planAgain.map.get('a') === 1)
    expect(planAgain.map.toJSON()).toEqual({ a: 1 })
  })

  it('is never told it is synced before the room was loaded', async () => {
    class SlowStore extends MemoryStore {
      open = () => {}
      readonly #opened = new Promise<void>((resolve) => { this.open = resolve })
      override async readDocument(key: DocumentKey) {
        await this.#opened
        return super.readDocument(key)
      }
    }
    const store = new SlowStore()
    const relay = await openRelay({}, store)
    const kept = new Y.Doc()
    kept.getMap('m').set('kept', 'yes')
    const { jobId, keys } = await relay.access.createJob([{ document: 'plan', update: Y.encodeStateAsUpdate(kept) }])
    const seated = await relay.seat(jobId, keys.client, 'Pell')
    const joining = stockJoin(relay, seated.seatId, bearer(seated))
    const first = await Promise.race([joining.then(() => 'synced'), new Promise((resolve) => setTimeout(() => resolve('waits'), 100))])
    expect(first).toBe('waits')
    store.open()
    expect((await joining).map.toJSON()).toEqual({ kept: 'yes' })
  })

  it('sees who else is here, stamped by the relay, also those who only look, and sees them go', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const looking = await stockJoin(relay, client.seatId, bearer(client))
    const working = await stockJoin(relay, photographer.seatId, bearer(photographer))
    working.provider.awareness.setLocalState({ pointer: { xMetres: 1, yMetres: 2 } })
    const seen = () => looking.provider.awareness.getStates().get(working.doc.clientID)
    await until(() => seen()?.pointer !== undefined)
    expect(seen()).toEqual({
      pointer: { xMetres: 1, yMetres: 2 }, seat: { seatId: photographer.seatId, name: 'Ines', role: 'photographer' },
    })
    await until(() => working.provider.awareness.getStates().has(looking.doc.clientID))
    expect(working.provider.awareness.getStates().get(looking.doc.clientID)).toEqual({
      seat: { seatId: client.seatId, name: 'Pell', role: 'client' },
    })
    working.provider.disconnect()
    await until(() => seen() === undefined)
  })

  it('is seen again at once when it comes back, although its presence did not change meanwhile', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const looking = await stockJoin(relay, client.seatId, bearer(client))
    const working = await stockJoin(relay, photographer.seatId, bearer(photographer))
    working.provider.awareness.setLocalState({ lookId: 'dusk' })
    const isSeen = () => looking.provider.awareness.getStates().has(working.doc.clientID)
    await until(isSeen)
    // A network that drops says no goodbye.
    ;(working.provider.ws as unknown as { terminate(): void }).terminate()
    await until(() => !isSeen())
    await until(isSeen)
    expect(looking.provider.awareness.getStates().get(working.doc.clientID)).toMatchObject({ lookId: 'dusk' })
  })

  it('hears from the relay itself who holds the pen and that edits are kept', async () => {
    const relay = await openRelay()
    const { client } = await relay.crew()
    const looking = await stockJoin(relay, client.seatId, bearer(client))
    const relayWord = () => [...looking.provider.awareness.getStates().values()].find((state) => 'relay' in state)?.relay
    await until(() => relayWord() !== undefined)
    expect(relayWord()).toEqual({ pen: null, notKept: null })
  })

  it('comes back by itself and finds everything when its connection was lost', async () => {
    const relay = await openRelay()
    const { photographer, assistant } = await relay.crew()
    const one = await stockJoin(relay, photographer.seatId, bearer(photographer))
    const other = await stockJoin(relay, assistant.seatId, bearer(assistant))
    ;(one.provider.ws as unknown as { terminate(): void }).terminate()
    other.map.set('meanwhile', 1)
    one.map.set('offline', 2)
    await until(() => one.map.get('meanwhile') === 1 && other.map.get('offline') === 2)
  })
})

describe('three role links in one browser', () => {
  it('do not disturb one another: each cookie is for its own seat alone', async () => {
    const relay = await openRelay()
    const { jobId, keys } = await relay.newJob()
    const seats = await Promise.all((['photographer', 'assistant', 'client'] as const).map(
      (role) => seatWithCookie(relay, jobId, keys[role], role)))
    for (const seat of seats) {
      expect(seat.setCookie).toMatch(new RegExp(`^halfstop_seat=[A-Za-z0-9_-]{22,}; Path=/s/${seat.seatId}; Max-Age=\\d+; HttpOnly; SameSite=Strict$`))
    }
    // RFC 6265 section 5.4: of one jar only the cookies whose path matches are sent.
    const jarFor = (path: string) => seats
      .filter(({ setCookie }) => {
        const cookiePath = /Path=([^;]+)/.exec(setCookie)?.[1] as string
        return path === cookiePath || path.startsWith(`${cookiePath}/`)
      })
      .map(({ cookie }) => cookie).join('; ')
    for (const [index, role] of (['photographer', 'assistant', 'client'] as const).entries()) {
      const { seatId } = seats[index] as { seatId: string }
      const me = await fetch(`${relay.origin}/s/${seatId}/me`, { headers: { cookie: jarFor(`/s/${seatId}/me`) } })
      expect(await me.json()).toMatchObject({ seatId, jobId, role })
    }
    const [one, other] = seats as [typeof seats[0], typeof seats[0], typeof seats[0]]
    const crossed = await fetch(`${relay.origin}/s/${one.seatId}/me`, { headers: { cookie: other.cookie } })
    expect(crossed.status).toBe(401)
  })
})
