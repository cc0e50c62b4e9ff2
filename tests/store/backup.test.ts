import Database from 'libsql'
import { execFile } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { sha256 } from '../../shared-core/arithmetic/sha256.ts'
import { checkStore } from '../../server/operate/check.ts'
import { backUpSqlite } from '../../server/operate/backup.ts'
import { restoreSqlite } from '../../server/operate/restore.ts'
import { MIGRATIONS } from '../../server/store/migrations.ts'
import { SqliteStore } from '../../server/store/sqliteStore.ts'
import type { DocumentKey } from '../../server/store/store.ts'

const folder = mkdtempSync(join(tmpdir(), 'halfstop-backup-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
/** A store in a folder of its own, under the name by which commands find it. */
const freshPath = () => join(mkdtempSync(join(folder, 'data-')), 'halfstop.db')

const DOCUMENTS = ['plan', 'rig', 'notes'] as const
const JOBS = ['dusk', 'dawn']

/** An update as a client's own document makes it. */
function updateOf(key: string, value: unknown): Uint8Array {
  const doc = new Y.Doc()
  doc.getMap('m').set(key, value)
  return Y.encodeStateAsUpdate(doc)
}

async function contentOf(store: SqliteStore, key: DocumentKey): Promise<unknown> {
  const doc = new Y.Doc()
  for (const update of (await store.readDocument(key)).updates) Y.applyUpdate(doc, update)
  return doc.getMap('m').toJSON()
}

async function filledStore(path: string): Promise<SqliteStore> {
  const store = new SqliteStore(path)
  for (const jobId of JOBS) {
    const link = { linkId: `${jobId}-link`, jobId, role: 'client' as const, keyHash: new Uint8Array(32).fill(1), createdMs: 1, expiresMs: 2, closedMs: null, revokedMs: 3 }
    await store.createJob({ jobId, createdMs: 5, links: [link], documents: [] })
    await store.addSeat({ seatId: `${jobId}-seat`, jobId, linkId: link.linkId, role: 'client', name: 'Pell', secretHash: new Uint8Array(32).fill(2), createdMs: 4 })
    await store.setPen(jobId, `${jobId}-seat`)
    for (const document of DOCUMENTS) {
      for (let count = 0; count < 5; count++) await store.append({ jobId, document }, updateOf(`${document}-${count}`, jobId))
    }
    const picture = new Uint8Array(20_000).map((_, index) => index % 251)
    await store.keep(jobId, { hash: sha256(picture), mediaType: 'image/png', bytes: picture })
    for (const vote of ['first', 'second']) await store.sealVote(jobId, { ballotId: 'b', seatId: `${jobId}-seat`, commandId: vote, vote })
  }
  return store
}

/** All that a store says of a job, byte for byte. */
async function allOf(store: SqliteStore, jobId: string): Promise<unknown> {
  return {
    job: await store.job(jobId), links: await store.linksOf(jobId), seat: await store.seat(`${jobId}-seat`),
    documents: await Promise.all(DOCUMENTS.map((document) => store.readDocument({ jobId, document }))),
    kept: await store.keptTotal(jobId), votes: await store.sealedVotes(jobId, 'b'),
  }
}

function run(command: string, environment: Record<string, string>, ...args: string[]): Promise<{ code: number; out: string; complaints: string }> {
  return new Promise((resolve) => {
    execFile(process.execPath, ['--import', 'tsx', `server/cli/${command}.ts`, ...args], { env: { ...process.env, ...environment } },
      (error, out, complaints) => resolve({ code: error === null ? 0 : Number(error.code), out, complaints }))
  })
}

describe('a backup', () => {
  it('brings back every document and all else of every job, from a store that is being written to', async () => {
    const path = freshPath()
    const store = await filledStore(path)
    const before = await Promise.all(JOBS.map((jobId) => allOf(store, jobId)))
    let edits = 0
    let isWriting = true
    const writing = (async () => {
      while (isWriting) await store.append({ jobId: 'dusk', document: 'rig' }, updateOf(`later-${++edits}`, 1))
    })()
    while (edits < 50) await new Promise((resolve) => setTimeout(resolve, 1))
    const backup = freshPath()
    const { code, complaints } = await run('backup', { DATA_DIR: dirname(path) }, backup)
    expect([code, complaints]).toEqual([0, ''])
    const editsAfter = edits
    isWriting = false
    await writing
    const restoredPath = freshPath()
    expect(restoreSqlite(backup, restoredPath)).toEqual({ brought: ['dawn', 'dusk'], there: [] })
    const restored = new SqliteStore(restoredPath)
    expect(await allOf(restored, 'dawn')).toEqual(before[1])
    for (const document of ['plan', 'notes'] as const) {
      expect(await contentOf(restored, { jobId: 'dusk', document })).toEqual(await contentOf(store, { jobId: 'dusk', document }))
    }
    // Of what was being written: all up to one instant, nothing after, no gap.
    const written = (await restored.readDocument({ jobId: 'dusk', document: 'rig' })).updates
    const all = (await store.readDocument({ jobId: 'dusk', document: 'rig' })).updates
    expect(written.length).toBeGreaterThanOrEqual(55)
    expect(written.length).toBeLessThanOrEqual(5 + editsAfter)
    expect(written).toEqual(all.slice(0, written.length))
    await restored.close()
    await store.close()
  })

  it('brings only what is missing to a store in use, and leaves its jobs as they are', async () => {
    const path = freshPath()
    const other = new SqliteStore(path)
    await other.createJob({ jobId: 'dusk', createdMs: 77, links: [], documents: [] })
    await other.append({ jobId: 'dusk', document: 'plan' }, updateOf('mine', 1))
    const source = freshPath()
    const backup = freshPath()
    const from = await filledStore(source)
    backUpSqlite(source, backup)
    expect(restoreSqlite(backup, path)).toEqual({ brought: ['dawn'], there: ['dusk'] })
    expect(await allOf(other, 'dawn')).toEqual(await allOf(from, 'dawn'))
    expect(await contentOf(other, { jobId: 'dusk', document: 'plan' })).toEqual({ mine: 1 })
    expect((await other.job('dusk'))?.createdMs).toBe(77)
    // The store goes on as before, also in what came back.
    expect(await other.append({ jobId: 'dawn', document: 'plan' }, updateOf('after', 1))).toBe(6)
    for (const each of [other, from]) await each.close()
  })

  it('is one file that only its owner reads, written over nothing, and gone when it could not be made', async () => {
    const path = freshPath()
    const store = await filledStore(path)
    const backup = freshPath()
    expect(backUpSqlite(path, backup)).toMatchObject({ jobs: 2, links: 2, seats: 2, updates: 30, kept: 2, sealed_votes: 4 })
    expect(statSync(backup).mode & 0o777).toBe(0o600)
    expect(['-wal', '-shm', '.partial'].filter((end) => existsSync(`${backup}${end}`))).toEqual([])
    expect(() => backUpSqlite(path, backup)).toThrow(/there already/)
    const nowhere = join(folder, 'no', 'such', 'folder.db')
    expect(() => backUpSqlite(path, nowhere)).toThrow(expect.objectContaining({ name: 'StoreError' }))
    expect(() => backUpSqlite(join(folder, 'absent.db'), freshPath())).toThrow(expect.objectContaining({ trouble: 'unreadable' }))
    await store.close()
  })

  it('of the first release is led up, in a copy, before it is brought in', async () => {
    const backup = freshPath()
    const old = new Database(backup)
    old.exec('CREATE TABLE migrations (version INTEGER PRIMARY KEY, applied_ms INTEGER NOT NULL) STRICT')
    old.exec(MIGRATIONS[0] as string)
    old.exec('INSERT INTO migrations VALUES (1, 0); INSERT INTO jobs VALUES (\'old\', 7, NULL)')
    old.prepare('INSERT INTO updates VALUES (?, ?, ?, ?)').run('old', 'plan', 3, Buffer.from(updateOf('kept', 1)))
    old.close()
    const bytes = readFileSync(backup)
    const path = freshPath()
    expect(restoreSqlite(backup, path).brought).toEqual(['old'])
    expect(readFileSync(backup).equals(bytes)).toBe(true)
    const store = new SqliteStore(path)
    expect(await contentOf(store, { jobId: 'old', document: 'plan' })).toEqual({ kept: 1 })
    await store.close()
  })

  it('that is none, or is damaged, is refused, and the store is untouched', async () => {
    const path = freshPath()
    const store = await filledStore(path)
    const backup = freshPath()
    backUpSqlite(path, backup)
    await store.close()
    const damaged = readFileSync(backup)
    damaged.fill(0xa5, 4_096 * 3, 4_096 * 5)
    writeFileSync(backup, damaged)
    const noStore = freshPath()
    writeFileSync(noStore, Buffer.alloc(8_192, 7))
    const target = freshPath()
    for (const bad of [backup, noStore, join(folder, 'absent.db')]) {
      expect(() => restoreSqlite(bad, target)).toThrow(expect.objectContaining({ name: 'StoreError' }))
    }
    expect(existsSync(target)).toBe(false)
  })
})

describe('the check', () => {
  it('reads every room of a store in use and finds nothing wrong', async () => {
    const path = freshPath()
    const store = await filledStore(path)
    const { code, out, complaints } = await run('check', { DATA_DIR: dirname(path) })
    expect([code, complaints]).toEqual([0, ''])
    expect(out).toContain('dusk/rig: 5 updates')
    expect(out).toContain('6 rooms, 0 of them faulty; 2 kept things.')
    await store.close()
  })

  it('names the room with a hole, with bytes that are no update, and the thing that changed', async () => {
    const path = freshPath()
    await (await filledStore(path)).close()
    const database = new Database(path)
    database.exec('DELETE FROM updates WHERE job_id = \'dusk\' AND document = \'rig\' AND sequence IN (2, 3)')
    database.prepare('UPDATE updates SET bytes = ? WHERE job_id = ? AND document = ? AND sequence = 4').run(Buffer.from([1, 255, 255]), 'dawn', 'notes')
    database.prepare('UPDATE kept SET bytes = ? WHERE job_id = ?').run(Buffer.from([1]), 'dawn')
    const { rooms, faults } = checkStore(database)
    expect(rooms.filter((room) => room.faults.length > 0).map(({ jobId, document, faults: ofRoom }) => [jobId, document, ofRoom])).toEqual([
      ['dawn', 'notes', ['Update 4 cannot be read.']], ['dusk', 'rig', ['Updates 2 to 3 are missing.']],
    ])
    expect(faults).toEqual([expect.stringContaining('of job dawn is not what it was')])
    database.close()
    expect((await run('check', {}, path)).code).toBe(1)
  })

  it('says that a damaged file is one', async () => {
    const path = freshPath()
    const store = await filledStore(path)
    await store.close()
    const bytes = readFileSync(path)
    bytes.fill(0xa5, 4_096 * 4)
    writeFileSync(path, bytes)
    const { code, out, complaints } = await run('check', {}, path)
    expect(code).toBeGreaterThan(0)
    expect(`${out}${complaints}`).toMatch(/damaged|unreadable/)
  })
})
