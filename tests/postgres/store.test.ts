import pg from 'pg'
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest'
import { POSTGRES_MIGRATIONS } from '../../server/store/postgresMigrations.ts'
import { PostgresStore } from '../../server/store/postgresStore.ts'
import { describeStoreContract } from '../store/contract.ts'
import { freshDatabase } from './database.ts'

let url = ''
let client: pg.Client
beforeAll(async () => {
  url = await freshDatabase(inject('databaseServerUrl'))
  client = new pg.Client({ connectionString: url })
  await client.connect()
  await (await PostgresStore.open(url)).close()
})
afterAll(() => client.end())

/** Opened on the one database of this file, with nothing in it. */
async function openEmpty(): Promise<PostgresStore> {
  await client.query('TRUNCATE jobs, links, seats, documents, updates, kept, sealed_votes, probe')
  return PostgresStore.open(url, 4)
}

describeStoreContract('PostgresStore', openEmpty)

describe('PostgresStore and its database', () => {
  const plan = { jobId: 'job', document: 'plan' } as const
  const newJob = { jobId: 'job', createdMs: 0, links: [], documents: [] }
  const bytes = (value: number) => new Uint8Array([value, value])

  it('keeps what was still waiting when it is closed, and gives everything back when opened again', async () => {
    const first = await openEmpty()
    await first.createJob(newJob)
    const waiting = Promise.all([1, 2, 3].map((value) => first.append(plan, bytes(value))))
    await first.close()
    expect(await waiting).toEqual([1, 2, 3])
    const second = await PostgresStore.open(url)
    expect(await second.readDocument(plan)).toEqual({ updates: [bytes(1), bytes(2), bytes(3)], lastSequence: 3 })
    await second.close()
  })

  it('does not let one bad append spoil others that share its commit', async () => {
    const store = await openEmpty()
    await store.createJob(newJob)
    const [bad, good] = await Promise.allSettled([
      store.append({ jobId: 'no such job', document: 'plan' }, bytes(1)), store.append(plan, bytes(2)),
    ])
    expect(bad).toMatchObject({ status: 'rejected', reason: { name: 'StoreError', trouble: 'other' } })
    expect(good).toEqual({ status: 'fulfilled', value: 1 })
    await store.close()
  })

  it('numbers the appends of two relays without a gap or a double, and never shows a later one before an earlier', async () => {
    const [one, other, watching] = [await openEmpty(), await PostgresStore.open(url), await PostgresStore.open(url)]
    await one.createJob(newJob)
    let isDone = false
    const watch = (async () => {
      let last = 0
      while (!isDone) {
        const { updates, lastSequence } = await watching.readDocument(plan, last)
        expect(updates.length).toBe(lastSequence - last)
        last = lastSequence
      }
    })()
    const appends = Array.from({ length: 200 }, async (_, index) => (index % 2 === 0 ? one : other).append(plan, bytes(index)))
    const sequences = await Promise.all(appends)
    isDone = true
    await watch
    expect([...sequences].sort((a, b) => a - b)).toEqual(Array.from({ length: 200 }, (_, index) => index + 1))
    const { updates } = await one.readDocument(plan)
    expect(sequences.map((sequence) => updates[sequence - 1]?.[0])).toEqual(sequences.map((_, index) => index))
    await Promise.all([one.close(), other.close(), watching.close()])
  })

  it('of two relays that write behind the same sequence at once lets one through', async () => {
    const [one, other] = [await openEmpty(), await PostgresStore.open(url)]
    await one.createJob(newJob)
    for (let last = 0; last < 20; last++) {
      const outcomes = await Promise.allSettled([one.append(plan, bytes(1), last), other.append(plan, bytes(2), last)])
      expect(outcomes.filter(({ status }) => status === 'fulfilled').length).toBe(1)
    }
    expect((await one.readDocument(plan)).lastSequence).toBe(20)
    await Promise.all([one.close(), other.close()])
  })

  it('folded by two relays at once loses nothing that came meanwhile', async () => {
    const [one, other] = [await openEmpty(), await PostgresStore.open(url)]
    await one.createJob(newJob)
    for (let round = 0; round < 10; round++) {
      const last = await one.append(plan, bytes(round))
      const [, , later] = await Promise.all([
        one.compact(plan, bytes(100), last), other.compact(plan, bytes(100), last), other.append(plan, bytes(50 + round)),
      ])
      expect(await one.readDocument(plan)).toEqual({ updates: [bytes(100), bytes(50 + round)], lastSequence: later })
    }
    await Promise.all([one.close(), other.close()])
  })

  it('starts once when several relays come to an empty database together', async () => {
    const fresh = await freshDatabase(inject('databaseServerUrl'))
    const stores = await Promise.all([1, 2, 3].map(() => PostgresStore.open(fresh)))
    await stores[0]?.createJob(newJob)
    expect((await stores[2]?.job('job'))?.jobId).toBe('job')
    await Promise.all(stores.map((store) => store.close()))
  })

  it('will not touch a store of a newer release', async () => {
    const fresh = await freshDatabase(inject('databaseServerUrl'))
    await (await PostgresStore.open(fresh)).close()
    const direct = new pg.Client({ connectionString: fresh })
    await direct.connect()
    await direct.query('INSERT INTO migrations (version, applied_ms) VALUES ($1, 0)', [POSTGRES_MIGRATIONS.length + 1])
    await direct.end()
    await expect(PostgresStore.open(fresh)).rejects.toMatchObject({ name: 'StoreError', trouble: 'unreadable' })
  })

  it('says that a database which is not there, or not open to it, cannot be reached', async () => {
    await expect(PostgresStore.open('postgres://nobody@127.0.0.1:1/none')).rejects.toMatchObject({ trouble: 'unreachable' })
    const wrong = new URL(url)
    wrong.password = 'wrong'
    await expect(PostgresStore.open(wrong.href)).rejects.toMatchObject({ trouble: 'unreachable' })
  })

  it('outlives the loss of a connection in the middle of a transaction', async () => {
    const store = await openEmpty()
    // So that the transaction is begun and waits.
    await client.query('BEGIN; LOCK TABLE jobs')
    const refusal = expect(store.createJob(newJob)).rejects.toMatchObject({ name: 'StoreError', trouble: 'unreachable' })
    const waiting = `SELECT pg_terminate_backend(pid) FROM pg_stat_activity
      WHERE application_name = 'halfstop' AND datname = current_database() AND wait_event_type = 'Lock'`
    while ((await client.query(waiting)).rowCount === 0) await new Promise((resolve) => setTimeout(resolve, 5))
    await refusal
    await client.query('ROLLBACK')
    await store.createJob(newJob)
    expect((await store.job('job'))?.jobId).toBe('job')
    await store.close()
  })

  it('says that a database which takes no writes is read-only', async () => {
    const store = await openEmpty()
    await store.createJob(newJob)
    const readOnly = await PostgresStore.open(`${url}?options=-c%20default_transaction_read_only%3Don`).catch((thrown: unknown) => thrown)
    expect(readOnly).toMatchObject({ trouble: 'read-only' })
    await store.close()
  })
})
