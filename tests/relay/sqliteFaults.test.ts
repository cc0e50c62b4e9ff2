import Database from 'libsql'
import { mkdtempSync, openSync, closeSync, readFileSync, rmSync, writeSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { storeErrorOf } from '../../server/store/sqliteDatabase.ts'
import { SqliteStore } from '../../server/store/sqliteStore.ts'
import { StoreError } from '../../server/store/storeError.ts'
import { openRelay, type TestRelay } from './openRelay.ts'
import { rawJoin, RawPeer, socketUrl, syncMessage, updateSetting, type Heard } from './rawPeer.ts'
import { startRelay, takeSeat } from './startedRelay.ts'
import { stockJoin } from './stockClient.ts'
import { until } from './until.ts'

const folder = mkdtempSync(join(tmpdir(), 'halfstop-faults-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The last that the relay said of whether edits are kept; undefined when it said nothing yet. */
function notKept(heard: readonly Heard[]): string | null | undefined {
  let last: string | null | undefined
  for (const one of heard) {
    if (one.kind !== 'presence') continue
    for (const { state } of one.states.values()) {
      const { relay } = (state ?? {}) as { relay?: { notKept: string | null } }
      if (relay !== undefined) last = relay.notKept
    }
  }
  return last
}

const health = async (relay: Pick<TestRelay, 'origin'>) => [
  (await fetch(`${relay.origin}/healthz`)).status, (await fetch(`${relay.origin}/readyz`)).status,
]

/** What SQLite really throws where it may not write. */
function realReadOnlyError(): unknown {
  const database = new Database(':memory:')
  database.exec('CREATE TABLE t (x); PRAGMA query_only = ON')
  try {
    database.exec('INSERT INTO t VALUES (1)')
  } catch (thrown) {
    return thrown
  } finally {
    database.close()
  }
  throw new Error('SQLite wrote where it may not')
}

/** An SQLite store on a disk that can be taken for read-only while it is in use. */
class DiskStore extends SqliteStore {
  isReadOnly = false

  override async append(...asked: Parameters<SqliteStore['append']>): Promise<number> {
    if (this.isReadOnly) throw storeErrorOf(realReadOnlyError())
    return super.append(...asked)
  }

  override async probe(): Promise<void> {
    if (this.isReadOnly) throw storeErrorOf(realReadOnlyError())
    return super.probe()
  }
}

describe('a disk that cannot be written to any more (SQLite says SQLITE_READONLY)', () => {
  it('is told in words, takes nothing that is not kept, and everything once it can be written to', async () => {
    const store = new DiskStore(join(folder, 'read-only.db'))
    const relay = await openRelay({ PROBE_MS: 20 }, store)
    const { jobId, photographer, client } = await relay.crew()
    const working = await stockJoin(relay, photographer.seatId, { authorization: `Bearer ${photographer.secret}` })
    const watching = await rawJoin(relay, client)
    working.map.set('first', 1)
    await watching.hear('change')
    store.isReadOnly = true
    working.map.set('second', 2)
    await until(() => notKept(watching.heard) === new StoreError('read-only', '').words)
    expect((await watching.document()).getMap('m').toJSON()).toEqual({ first: 1 })
    expect((await store.readDocument({ jobId, document: 'plan' })).updates.length).toBe(1)
    expect(await health(relay)).toEqual([200, 503])
    store.isReadOnly = false
    await watching.hear('change', ({ update }) => Buffer.from(update).includes('second'))
    expect((await watching.document()).getMap('m').toJSON()).toEqual({ first: 1, second: 2 })
    expect(await health(relay)).toEqual([200, 200])
  })
})

describe('pages that were damaged', () => {
  it('shut those out whom they concern, in words, and show nothing of what is left; the process lives', { timeout: 60_000 }, async () => {
    const dataFolder = join(folder, 'damaged')
    const environment = { DATA_DIR: dataFolder, LOG_LEVEL: 'none' }
    const before = await startRelay(environment)
    const seat = await takeSeat(before.origin, before.links.assistant as string, 'Tobin')
    const writing = await rawJoin(before, seat, 'rig')
    // Enough that this document fills pages of its own.
    for (let count = 0; count < 20; count++) writing.send(syncMessage(2, updateSetting(`k${count}`, 'filling '.repeat(500))))
    await writing.document()
    expect(await before.end('SIGTERM')).toBe(0)
    damage(join(dataFolder, 'halfstop.db'), 'filling filling')
    const relay = await startRelay(environment)
    const shutOut = new RawPeer(socketUrl(relay, seat.seatId, 'rig'), { authorization: `Bearer ${seat.secret}` })
    expect(await shutOut.closed).toEqual({ code: CLOSE_CODES.unreadable.code, reason: CLOSE_CODES.unreadable.words })
    expect(shutOut.heard.filter(({ kind }) => kind === 'answer' || kind === 'change')).toEqual([])
    expect(await health(relay)).toEqual([200, 200])
    const me = await fetch(`${relay.origin}/s/${seat.seatId}/me`, { headers: { authorization: `Bearer ${seat.secret}` } })
    expect(me.status).toBe(200)
    expect(await relay.end('SIGTERM')).toBe(0)
  })
})

/**
 * Overwrites every overflow page that holds this text. They begin with the number of the next, pages of the tree with
 * their kind (https://www.sqlite.org/fileformat2.html, sections 1.6 and 1.7), and those hold other documents too.
 */
function damage(path: string, text: string): void {
  const database = new Database(path)
  // Pages that are free would show the text too.
  database.exec('VACUUM; PRAGMA wal_checkpoint(TRUNCATE)')
  database.close()
  const bytes = readFileSync(path)
  const file = openSync(path, 'r+')
  for (let page = 4_096; page < bytes.length; page += 4_096) {
    if (bytes[page] === 0 && bytes.subarray(page, page + 4_096).includes(text)) writeSync(file, Buffer.alloc(4_096, 0xa5), 0, 4_096, page)
  }
  closeSync(file)
}
