import Database from 'libsql'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, inject, it } from 'vitest'
import { sha256 } from '../../shared-core/arithmetic/sha256.ts'
import { backUpPostgres, backUpSqlite } from '../../server/operate/backup.ts'
import { checkStore } from '../../server/operate/check.ts'
import { restorePostgres, restoreSqlite } from '../../server/operate/restore.ts'
import { PostgresStore } from '../../server/store/postgresStore.ts'
import { SqliteStore } from '../../server/store/sqliteStore.ts'
import type { LinkRecord, Store } from '../../server/store/store.ts'
import { updateSetting } from '../relay/rawPeer.ts'
import { freshDatabase } from './database.ts'

const folder = mkdtempSync(join(tmpdir(), 'halfstop-postgres-backup-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const DOCUMENTS = ['plan', 'rig', 'notes'] as const

function link(linkId: string): LinkRecord {
  return { linkId, jobId: 'dusk', role: 'client', keyHash: new Uint8Array(32).fill(9), createdMs: 1, expiresMs: 2, closedMs: null, revokedMs: 3 }
}

async function fill(store: Store): Promise<void> {
  // Not in the order of their names: that in which they were made has to come back.
  await store.createJob({ jobId: 'dusk', createdMs: 5, links: [link('z'), link('a')], documents: [] })
  await store.addSeat({ seatId: 'seat', jobId: 'dusk', linkId: 'z', role: 'client', name: 'Řehoř 光', secretHash: new Uint8Array(32).fill(2), createdMs: 4 })
  await store.setPen('dusk', 'seat')
  for (const document of DOCUMENTS) for (let count = 0; count < 4; count++) await store.append({ jobId: 'dusk', document }, updateSetting(`k${count}`, document))
  const picture = new Uint8Array(20_000).map((_, index) => index % 251)
  await store.keep('dusk', { hash: sha256(picture), mediaType: 'image/png', bytes: picture })
  for (const vote of ['z-first', 'a-second']) await store.sealVote('dusk', { ballotId: 'b', seatId: vote, commandId: vote, vote })
}

async function allOf(store: Store): Promise<unknown> {
  return {
    job: await store.job('dusk'), links: await store.linksOf('dusk'), seat: await store.seat('seat'), votes: await store.sealedVotes('dusk', 'b'),
    documents: await Promise.all(DOCUMENTS.map((document) => store.readDocument({ jobId: 'dusk', document }))),
    kept: await store.keptTotal('dusk'),
  }
}

it('a database in use is backed up, found whole, and brought back into another database and into a file', async () => {
  const url = await freshDatabase(inject('databaseServerUrl'))
  const source = await PostgresStore.open(url)
  await fill(source)
  const before = await allOf(source)
  const backup = join(folder, 'backup.db')
  expect(await backUpPostgres(url, backup)).toMatchObject({ jobs: 1, links: 2, updates: 12, kept: 1, sealed_votes: 2 })
  const database = new Database(backup)
  expect(checkStore(database).faults).toEqual([])
  expect(checkStore(database).rooms.flatMap((room) => room.faults)).toEqual([])
  database.close()

  const otherUrl = await freshDatabase(inject('databaseServerUrl'))
  expect(await restorePostgres(backup, otherUrl)).toEqual({ brought: ['dusk'], there: [] })
  expect(await restorePostgres(backup, otherUrl)).toEqual({ brought: [], there: ['dusk'] })
  const other = await PostgresStore.open(otherUrl)
  expect(await allOf(other)).toEqual(before)
  expect(await other.append({ jobId: 'dusk', document: 'plan' }, updateSetting('after', 1))).toBe(5)

  const path = join(folder, 'halfstop.db')
  restoreSqlite(backup, path)
  const file = new SqliteStore(path)
  expect(await allOf(file)).toEqual(before)
  // And from a file to a database, which is how a relay of one's own becomes several.
  const fromFile = join(folder, 'from-file.db')
  backUpSqlite(path, fromFile)
  const thirdUrl = await freshDatabase(inject('databaseServerUrl'))
  await restorePostgres(fromFile, thirdUrl)
  const third = await PostgresStore.open(thirdUrl)
  expect(await allOf(third)).toEqual(before)
  for (const each of [source, other, file, third]) await each.close()
})
