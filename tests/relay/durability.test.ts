import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { refusalText } from '../../server/relay/refusals.ts'
import { MemoryStore } from '../../server/store/memoryStore.ts'
import { SqliteStore } from '../../server/store/sqliteStore.ts'
import type { DocumentKey } from '../../server/store/store.ts'
import { StoreError } from '../../server/store/storeError.ts'
import { openRelay, type Seated } from './openRelay.ts'
import { rawJoin, RawPeer, socketUrl, syncMessage, updateSetting, type Heard } from './rawPeer.ts'
import { startRelay, takeSeat } from './startedRelay.ts'
import { stockJoin } from './stockClient.ts'
import { until } from './until.ts'

const folder = mkdtempSync(join(tmpdir(), 'halfstop-durability-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const bearer = (seated: Pick<Seated, 'secret'>) => ({ authorization: `Bearer ${seated.secret}` })

function relayWord(heard: Heard): { pen: unknown; notKept: string | null } | undefined {
  if (heard.kind !== 'presence') return undefined
  for (const { state } of heard.states.values()) {
    const { relay } = (state ?? {}) as { relay?: { pen: unknown; notKept: string | null } }
    if (relay !== undefined) return relay
  }
  return undefined
}

/** A memory store whose appends wait, or fail, as the test wishes. */
class GatedStore extends MemoryStore {
  gate: Promise<void> = Promise.resolve()
  failure: StoreError | null = null

  override async append(key: DocumentKey, update: Uint8Array): Promise<number> {
    await this.gate
    if (this.failure !== null) throw this.failure
    return super.append(key, update)
  }

  override async probe(): Promise<void> {
    if (this.failure !== null) throw this.failure
  }
}

describe('a relay killed with SIGKILL', () => {
  it('has lost nothing that another person saw, three times over, and people keep their seats', { timeout: 120_000 }, async () => {
    const environment = { DATA_DIR: join(folder, 'killed'), LOG_LEVEL: 'none' }
    let relay = await startRelay(environment)
    const working = await takeSeat(relay.origin, relay.links.assistant as string, 'Tobin')
    const watching = await takeSeat(relay.origin, relay.links.client as string, 'Pell')
    const seenEver = new Set<string>()
    for (let round = 0; round < 3; round++) {
      const writer = await stockJoin(relay, working.seatId, bearer(working))
      const watcher = await stockJoin(relay, watching.seatId, bearer(watching))
      for (const key of seenEver) expect([key, watcher.map.get(key)]).toEqual([key, 1])
      const typing = setInterval(() => writer.map.set(`${round}-${writer.map.size}`, 1), 1)
      await until(() => watcher.map.size >= seenEver.size + 60)
      // Edits are on their way at the moment of the kill; whatever still reaches the watcher counts as seen.
      await relay.end('SIGKILL')
      clearInterval(typing)
      for (const key of watcher.map.keys()) seenEver.add(key)
      writer.provider.destroy()
      watcher.provider.destroy()
      relay = await startRelay(environment)
    }
    const witness = await stockJoin(relay, watching.seatId, bearer(watching))
    expect(seenEver.size).toBeGreaterThanOrEqual(180)
    for (const key of seenEver) expect([key, witness.map.get(key)]).toEqual([key, 1])
    expect(readPlanFromDocument(witness.doc).plan?.title).toContain('Late Harvest')
    witness.provider.destroy()
    expect(await relay.end('SIGTERM')).toBe(0)
  })
})

describe('a relay that cannot read its store', () => {
  it('says so in words and does not start', async () => {
    const dataFolder = mkdtempSync(join(folder, 'damaged-'))
    writeFileSync(join(dataFolder, 'halfstop.db'), Buffer.alloc(8_192, 7))
    await expect(startRelay({ DATA_DIR: dataFolder })).rejects.toThrow(/ended with 1:\s+The file that keeps this job cannot be read/)
  })

  it('tells those who come to a damaged document, and serves the others', async () => {
    class DamagedStore extends MemoryStore {
      override async readDocument(key: DocumentKey) {
        if (key.document === 'rig') throw new StoreError('unreadable', 'malformed page')
        return super.readDocument(key)
      }
    }
    const relay = await openRelay({}, new DamagedStore())
    const { photographer } = await relay.crew()
    const peer = new RawPeer(socketUrl(relay, photographer.seatId, 'rig'), bearer(photographer))
    expect(await peer.closed).toEqual({ code: CLOSE_CODES.unreadable.code, reason: CLOSE_CODES.unreadable.words })
    expect(peer.heard.filter(({ kind }) => kind === 'answer')).toEqual([])
    await (await rawJoin(relay, photographer, 'plan')).document()
  })
})

describe('an edit', () => {
  it('is shown to nobody before it is kept, not even to one who comes in meanwhile', async () => {
    const store = new GatedStore()
    const relay = await openRelay({}, store)
    const { photographer, client, assistant } = await relay.crew()
    const working = await rawJoin(relay, photographer)
    const watching = await rawJoin(relay, client)
    await Promise.all([working.document(), watching.document()])
    let open = () => {}
    store.gate = new Promise<void>((resolve) => { open = resolve })
    working.send(syncMessage(2, updateSetting('edit', 1)))
    const late = await rawJoin(relay, assistant)
    late.send(syncMessage(0, Y.encodeStateVector(new Y.Doc())))
    // Another document of the same relay answers meanwhile, so silence here is no slowness.
    await (await rawJoin(relay, assistant, 'rig')).document()
    await (await rawJoin(relay, client, 'rig')).document()
    for (const peer of [watching, late, working]) expect(peer.heard.filter(({ kind }) => kind === 'change')).toEqual([])
    expect(late.heard.filter(({ kind }) => kind === 'answer')).toEqual([])
    open()
    await watching.hear('change')
    const answer = new Y.Doc()
    Y.applyUpdate(answer, (await late.hear('answer')).update)
    expect(answer.getMap('m').toJSON()).toEqual({ edit: 1 })
  })

  it('that could not be kept is gone from the relay, its sender is told, and it lands once it can be kept', async () => {
    const store = new GatedStore()
    const relay = await openRelay({ PROBE_MS: 20 }, store)
    const { photographer, client } = await relay.crew()
    const watching = await rawJoin(relay, client)
    const raw = await rawJoin(relay, photographer, 'plan')
    const working = await stockJoin(relay, photographer.seatId, bearer(photographer))
    working.map.set('before', 1)
    await watching.hear('change')
    store.failure = new StoreError('full', 'no space')
    working.map.set('lost?', 2)
    await until(() => watching.heard.some((heard) => relayWord(heard)?.notKept === store.failure?.words))
    expect((await watching.document()).getMap('m').toJSON()).toEqual({ before: 1 })
    raw.send(syncMessage(2, updateSetting('while full', 3)))
    expect((await raw.hear('denied')).reason).toBe(refusalText('not-kept'))
    const ready = await fetch(`${relay.origin}/readyz`)
    expect([ready.status, await ready.json()]).toMatchObject([503, { ready: false, notKept: store.failure.words }])
    store.failure = null
    await until(() => watching.heard.findLast((heard) => relayWord(heard) !== undefined) !== undefined &&
      relayWord(watching.heard.findLast((heard) => relayWord(heard) !== undefined) as Heard)?.notKept === null)
    await until(() => relay.logLines.some((line) => line.includes('edits are kept again')))
    await watching.hear('change', ({ update }) => Buffer.from(update).includes('lost?'))
    expect((await watching.document()).getMap('m').toJSON()).toEqual({ 'before': 1, 'lost?': 2 })
    expect((await fetch(`${relay.origin}/readyz`)).status).toBe(200)
  })
})

describe('a full disk (SQLite says SQLITE_FULL)', () => {
  it('refuses edits in words, keeps the relay alive and readable, and is over when there is room again', async () => {
    const store = new SqliteStore(join(folder, 'full.db'))
    const relay = await openRelay({ PROBE_MS: 20 }, store)
    const { jobId, photographer, client } = await relay.crew()
    const working = await stockJoin(relay, photographer.seatId, bearer(photographer))
    const watching = await rawJoin(relay, client)
    working.map.set('first', 1)
    await watching.hear('change')
    store.limitBytes(1)
    working.map.set('large', 'x'.repeat(100_000))
    await until(() => watching.heard.some((heard) => /disk.*full/.test(relayWord(heard)?.notKept ?? '')))
    expect((await watching.document()).getMap('m').toJSON()).toEqual({ first: 1 })
    expect((await store.readDocument({ jobId, document: 'plan' })).updates.length).toBe(1)
    // One who comes in now still sees what is kept.
    expect((await (await rawJoin(relay, client)).document()).getMap('m').toJSON()).toEqual({ first: 1 })
    const refused = await relay.post('/api/jobs', { plan: demoPlan })
    expect([refused.status, ((await refused.json()) as { code: string }).code]).toEqual([503, 'not-kept'])
    store.limitBytes(null)
    await watching.hear('change', ({ update }) => Buffer.from(update).includes('xxxxxxxx'))
    expect((await watching.document()).getMap('m').get('large')).toBe('x'.repeat(100_000))
    expect((await relay.post('/api/jobs', { plan: demoPlan })).status).toBe(201)
  })
})

describe('the log of a document', () => {
  it.each([
    { edits: 23, foldedBy: 'once it is long and nobody says anything' },
    { edits: 73, foldedBy: 'when it is very long, whether or not anybody does' },
  ])('is folded $foldedBy, and gives the same document', async ({ edits }) => {
    const store = new MemoryStore()
    const relay = await openRelay({ COMPACT_AFTER_UPDATES: 5, MERGE_WINDOW_MS: 0 }, store)
    const { jobId, photographer } = await relay.crew()
    const peer = await rawJoin(relay, photographer)
    const inLog: number[] = []
    const read = async () => {
      const document = await store.readDocument({ jobId, document: 'plan' })
      inLog.push(document.updates.length)
      return document
    }
    for (let count = 0; count < edits; count++) {
      peer.send(syncMessage(2, updateSetting(`k${count}`, count)))
      await peer.document()
      await read()
    }
    expect(Math.max(...inLog)).toBe(Math.min(edits, 49))
    while ((await read()).updates.length > 5) await new Promise((resolve) => setTimeout(resolve, 20))
    const { updates, lastSequence } = await read()
    expect(lastSequence).toBe(edits)
    const kept = new Y.Doc()
    for (const update of updates) Y.applyUpdate(kept, update)
    expect(kept.getMap('m').toJSON()).toEqual((await peer.document()).getMap('m').toJSON())
    expect(kept.getMap('m').size).toBe(edits)
  })

  it('is folded when everybody has gone, and the room opens again with all of it', async () => {
    const store = new MemoryStore()
    const relay = await openRelay({ ROOM_IDLE_MS: 0, MERGE_WINDOW_MS: 0 }, store)
    const { jobId, photographer } = await relay.crew()
    const peer = await rawJoin(relay, photographer)
    for (let count = 0; count < 4; count++) {
      peer.send(syncMessage(2, updateSetting(`k${count}`, count)))
      await peer.document()
    }
    peer.socket.close()
    const logged = async () => (await store.readDocument({ jobId, document: 'plan' })).updates.length
    for (let patience = 0; patience < 500 && (await logged()) > 1; patience++) await new Promise((resolve) => setTimeout(resolve, 10))
    expect(await logged()).toBe(1)
    const again = await rawJoin(relay, photographer)
    expect((await again.document()).getMap('m').toJSON()).toEqual({ k0: 0, k1: 1, k2: 2, k3: 3 })
  })
})

describe('stopping', () => {
  it('keeps what had arrived and sends everybody off with the code that means "come back"', async () => {
    const path = join(folder, 'stopping.db')
    const relay = await openRelay({ MERGE_WINDOW_MS: 200 }, new SqliteStore(path))
    const { jobId, photographer, client } = await relay.crew()
    const working = await rawJoin(relay, photographer)
    const watching = await rawJoin(relay, client)
    await working.document()
    working.send(syncMessage(2, updateSetting('a', 1)))
    const before = watching.heard.indexOf(await watching.hear('change')) + 1
    working.send(syncMessage(2, updateSetting('b', 2)))
    working.send(new Uint8Array([3]))
    await working.hear('presence', () => true, working.heard.length)
    await relay.stop()
    expect((await watching.closed).code).toBe(CLOSE_CODES.stopping.code)
    const store = new SqliteStore(path)
    const kept = new Y.Doc()
    for (const update of (await store.readDocument({ jobId, document: 'plan' })).updates) Y.applyUpdate(kept, update)
    expect(kept.getMap('m').toJSON()).toEqual({ a: 1, b: 2 })
    expect(watching.heard.slice(before).some(({ kind }) => kind === 'change')).toBe(true)
    await store.close()
  })
})
