import Database from 'libsql'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { MIGRATIONS } from '../../server/store/migrations.ts'
import { SqliteStore } from '../../server/store/sqliteStore.ts'
import { describeStoreContract } from './contract.ts'

const folder = mkdtempSync(join(tmpdir(), 'halfstop-store-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
let files = 0
const freshPath = () => join(folder, `store-${++files}.db`)

describeStoreContract('SqliteStore', async () => new SqliteStore(freshPath()))
describeStoreContract('SqliteStore that waits for the disk', async () => new SqliteStore(freshPath(), 'power'))

describe('SqliteStore and its file', () => {
  const plan = { jobId: 'job', document: 'plan' } as const
  const newJob = { jobId: 'job', createdMs: 0, links: [], documents: [] }

  it('gives everything back when opened again', async () => {
    const path = freshPath()
    const first = new SqliteStore(path)
    await first.createJob(newJob)
    await first.append(plan, new Uint8Array([1, 2, 3]))
    await first.close()
    const second = new SqliteStore(path)
    expect(await second.readDocument(plan)).toEqual({ updates: [new Uint8Array([1, 2, 3])], lastSequence: 1 })
    await second.close()
  })

  it('keeps what was still waiting when it is closed', async () => {
    const path = freshPath()
    const first = new SqliteStore(path)
    await first.createJob(newJob)
    const waiting = first.append(plan, new Uint8Array([9]))
    await first.close()
    expect(await waiting).toBe(1)
    const second = new SqliteStore(path)
    expect((await second.readDocument(plan)).updates).toEqual([new Uint8Array([9])])
    await second.close()
  })

  it('does not let one bad append spoil others that share its turn', async () => {
    const store = new SqliteStore(freshPath())
    await store.createJob(newJob)
    const [bad, good] = await Promise.allSettled([
      store.append({ jobId: 'no such job', document: 'plan' }, new Uint8Array([1])),
      store.append(plan, new Uint8Array([2])),
    ])
    expect(bad.status).toBe('rejected')
    expect(good).toEqual({ status: 'fulfilled', value: 1 })
    await store.close()
  })

  it('says that a file which is no database cannot be read', () => {
    const path = freshPath()
    writeFileSync(path, Buffer.alloc(8_192, 7))
    expect(() => new SqliteStore(path)).toThrow(expect.objectContaining({ name: 'StoreError', trouble: 'unreadable' }))
  })

  it('says that a file whose pages were overwritten cannot be read', async () => {
    const path = freshPath()
    const store = new SqliteStore(path)
    await store.createJob(newJob)
    for (let count = 0; count < 50; count++) await store.append(plan, new Uint8Array(2_000))
    await store.close()
    const file = readFileSync(path)
    file.fill(0xa5, 4_096 * 3)
    writeFileSync(path, file)
    const damaged = new SqliteStore(path)
    await expect(damaged.readDocument(plan)).rejects.toMatchObject({ name: 'StoreError', trouble: 'unreadable' })
    await damaged.close()
  })

  it('leads a store of the first shape up and keeps what is in it', async () => {
    const path = freshPath()
    const old = new Database(path)
    old.exec('CREATE TABLE migrations (version INTEGER PRIMARY KEY, applied_ms INTEGER NOT NULL) STRICT')
    old.exec(MIGRATIONS[0] as string)
    old.prepare('INSERT INTO migrations (version, applied_ms) VALUES (1, 0)').run()
    old.prepare('INSERT INTO jobs (job_id, created_ms) VALUES (?, ?)').run('job', 7)
    old.prepare('INSERT INTO updates (job_id, document, sequence, bytes) VALUES (?, ?, ?, ?)').run('job', 'plan', 1, new Uint8Array([4, 4]))
    old.close()
    const store = new SqliteStore(path)
    expect(await store.job('job')).toEqual({ jobId: 'job', createdMs: 7, penSeatId: null })
    expect(await store.readDocument(plan)).toEqual({ updates: [new Uint8Array([4, 4])], lastSequence: 1 })
    await store.keep('job', { hash: 'aa', mediaType: 'image/png', bytes: new Uint8Array([1]) })
    expect(await store.keptTotal('job')).toEqual({ things: 1, bytes: 1 })
    await store.close()
  })

  it('keeps every update in its order when it puts thousands in their places, and across a fold among them', async () => {
    const path = freshPath()
    const store = new SqliteStore(path)
    await store.createJob(newJob)
    const rig = { ...plan, document: 'rig' } as const
    const numbered = (count: number) => new Uint8Array([count & 255, count >> 8])
    await Promise.all(Array.from({ length: 2_500 }, (_, count) => store.append(count % 2 === 0 ? plan : rig, numbered(count))))
    // Whatever is to be done after the commit has been done.
    await new Promise((resolve) => setTimeout(resolve, 50))
    await store.append(rig, numbered(9))
    await store.compact(rig, numbered(7), 1_200)
    const before = [await store.readDocument(plan), await store.readDocument(rig)]
    expect(before[0]?.updates.slice(-1_250)).toEqual(Array.from({ length: 1_250 }, (_, index) => numbered(index * 2)))
    expect(before[1]?.updates).toEqual([7, ...Array.from({ length: 50 }, (_, index) => (1_200 + index) * 2 + 1), 9].map(numbered))
    await store.close()
    const again = new SqliteStore(path)
    expect([await again.readDocument(plan), await again.readDocument(rig)]).toEqual(before)
    await again.close()
  })

  it('gives kept things and sealed votes back when opened again', async () => {
    const path = freshPath()
    const first = new SqliteStore(path)
    await first.createJob(newJob)
    const thing = { hash: 'aa', mediaType: 'image/png', bytes: new Uint8Array([1, 2, 3]) }
    const vote = { ballotId: 'b', seatId: 's', commandId: 'c', vote: '{}' }
    await first.keep('job', thing)
    await first.sealVote('job', vote)
    await first.close()
    const second = new SqliteStore(path)
    expect(await second.kept('job', 'aa')).toEqual(thing)
    expect(await second.sealedVotes('job', 'b')).toEqual([vote])
    await second.close()
  })

  it('will not touch a store of a newer release', async () => {
    const path = freshPath()
    await new SqliteStore(path).close()
    const database = new Database(path)
    database.prepare('INSERT INTO migrations (version, applied_ms) VALUES (?, ?)').run(999, 0)
    database.close()
    expect(() => new SqliteStore(path)).toThrow(expect.objectContaining({ trouble: 'unreadable' }))
  })

  it('is held by one process alone, and free again once closed', async () => {
    const path = freshPath()
    const first = new SqliteStore(path)
    await first.createJob(newJob)
    expect(() => new SqliteStore(path)).toThrow(expect.objectContaining({ name: 'StoreError', trouble: 'busy' }))
    await first.append(plan, new Uint8Array([1]))
    await first.close()
    const second = new SqliteStore(path)
    expect((await second.readDocument(plan)).updates).toEqual([new Uint8Array([1])])
    await second.close()
  })
})
