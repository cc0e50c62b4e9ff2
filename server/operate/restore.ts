import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'libsql'
import type pg from 'pg'
import { inPostgresTransaction, migratePostgres, openPool } from '../store/postgresDatabase.ts'
import { closeSqliteDatabase, inTransaction, openSqliteDatabase, pragma, storeErrorOf, type SqliteDatabase } from '../store/sqliteDatabase.ts'
import { settleUpdates } from '../store/sqliteLog.ts'
import { StoreError } from '../store/storeError.ts'
import { STORE_TABLES, type StoreTable } from './storeTables.ts'

/** Which jobs of a backup were brought back, and which were left alone because the store has them. */
export interface Restored {
  readonly brought: readonly string[]
  readonly there: readonly string[]
}

type Row = Readonly<Record<string, unknown>>

/** Rows sent to PostgreSQL at a time. */
const BATCH_ROWS = 100

/**
 * Brings every job of a backup that the store lacks back into it, whole: links, seats, documents, kept things, votes. A
 * job that the store has is left as it is, so this can be done while a relay runs on the store. Into a store that is not
 * there yet it brings everything. A backup of an older release is led up to the present shape first, in a copy of it.
 * @throws StoreError; nothing has happened then
 */
export function restoreSqlite(backup: string, storePath: string): Restored {
  return withUsableCopy(backup, (copyPath, copy) => {
    closeSqliteDatabase(copy)
    const store = openSqliteDatabase(storePath, 'power')
    try {
      store.exec(`ATTACH '${copyPath.replaceAll('\'', '\'\'')}' AS backup`)
      return inTransaction(store, () => {
        const restored = sortJobs(jobsOf(store, 'backup'), new Set(jobsOf(store, 'main')))
        store.exec('CREATE TEMP TABLE missing AS SELECT job_id FROM backup.jobs WHERE job_id NOT IN (SELECT job_id FROM main.jobs)')
        for (const table of STORE_TABLES) {
          const columns = table.columns.join(', ')
          store.exec(`INSERT INTO main.${table.name} (${columns}) SELECT ${columns} FROM backup.${table.name}
            WHERE job_id IN (SELECT job_id FROM temp.missing) ORDER BY ${orderOf(table)}`)
        }
        store.exec('DROP TABLE temp.missing')
        return restored
      })
    } finally {
      store.close()
    }
  })
}

/** The same into a PostgreSQL store. @throws StoreError; nothing has happened then */
export async function restorePostgres(backup: string, url: string): Promise<Restored> {
  const pool = openPool(url, 1)
  try {
    await migratePostgres(pool)
    return await withUsableCopyAsync(backup, (copy) => inPostgresTransaction(pool, async (client) => {
      const { rows } = await client.query<{ job_id: string }>('SELECT job_id FROM jobs')
      const restored = sortJobs(jobsOf(copy, 'main'), new Set(rows.map((row) => row.job_id)))
      for (const table of STORE_TABLES) {
        const select = copy.prepare(`SELECT ${table.columns.join(', ')} FROM ${table.name} WHERE job_id = ? ORDER BY ${orderOf(table)}`)
        for (const jobId of restored.brought) await insertRows(client, table, select.all(jobId) as Row[])
      }
      await client.query(`INSERT INTO documents (job_id, document, last_sequence)
        SELECT job_id, document, max(sequence) FROM updates WHERE job_id = ANY($1) GROUP BY job_id, document`, [restored.brought])
      return restored
    }))
  } finally {
    await pool.end()
  }
}

async function insertRows(client: pg.PoolClient, { name, columns }: StoreTable, rows: readonly Row[]): Promise<void> {
  for (let at = 0; at < rows.length; at += BATCH_ROWS) {
    const batch = rows.slice(at, at + BATCH_ROWS)
    const places = batch.map((_row, row) => `(${columns.map((_column, column) => `$${row * columns.length + column + 1}`).join(', ')})`)
    await client.query(`INSERT INTO ${name} (${columns.join(', ')}) VALUES ${places.join(', ')}`,
      batch.flatMap((row) => columns.map((column) => forPostgres(row[column]))))
  }
}

/** The order in which rows were made where that says something; SQLite numbers them by it. */
function orderOf({ madeBy, key }: StoreTable): string {
  return madeBy === undefined ? key.join(', ') : 'rowid'
}

function sortJobs(inBackup: readonly string[], inStore: ReadonlySet<string>): Restored {
  return { brought: inBackup.filter((jobId) => !inStore.has(jobId)), there: inBackup.filter((jobId) => inStore.has(jobId)) }
}

function jobsOf(database: SqliteDatabase, schema: 'main' | 'backup'): string[] {
  return (database.prepare(`SELECT job_id FROM ${schema}.jobs ORDER BY job_id`).all() as { job_id: string }[]).map((row) => row.job_id)
}

function forPostgres(value: unknown): unknown {
  return value instanceof ArrayBuffer ? Buffer.from(value) : value
}

function withUsableCopy<Value>(backup: string, use: (path: string, copy: SqliteDatabase) => Value): Value {
  const folder = mkdtempSync(join(tmpdir(), 'halfstop-restore-'))
  try {
    const path = join(folder, 'backup.db')
    return use(path, usableCopy(backup, path))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

async function withUsableCopyAsync<Value>(backup: string, use: (copy: SqliteDatabase) => Promise<Value>): Promise<Value> {
  const folder = mkdtempSync(join(tmpdir(), 'halfstop-restore-'))
  try {
    const copy = usableCopy(backup, join(folder, 'backup.db'))
    try {
      return await use(copy)
    } finally {
      copy.close()
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** A copy in the present shape, so that the backup itself stays as it was written. */
function usableCopy(backup: string, path: string): SqliteDatabase {
  if (!existsSync(backup)) throw new StoreError('unreadable', `there is no file ${backup}`)
  copyFileSync(backup, path)
  if (!isStore(path)) throw new StoreError('unreadable', `${backup} is no backup of this program`)
  const copy = openSqliteDatabase(path, 'process')
  settleUpdates(copy)
  return copy
}

function isStore(path: string): boolean {
  const database = new Database(path)
  try {
    if (pragma(database, 'integrity_check') !== 'ok') return false
    return database.prepare('SELECT version FROM migrations LIMIT 1').all().length === 1
  } catch (thrown) {
    if (storeErrorOf(thrown).trouble === 'busy') throw storeErrorOf(thrown)
    return false
  } finally {
    database.close()
  }
}
