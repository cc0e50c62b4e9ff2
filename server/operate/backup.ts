import Database from 'libsql'
import { chmodSync, closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs'
import type pg from 'pg'
import { inTransaction, openSqliteDatabase, pragma, storeErrorOf, type SqliteDatabase } from '../store/sqliteDatabase.ts'
import { settleUpdates } from '../store/sqliteLog.ts'
import { inPostgresTransaction, openPool } from '../store/postgresDatabase.ts'
import { StoreError } from '../store/storeError.ts'
import { countRows, STORE_TABLES, type StoreTable } from './storeTables.ts'

/** How many rows each table of the backup has. */
export type Counts = Readonly<Record<string, number>>

/** Rows fetched from PostgreSQL at a time. */
const BATCH_ROWS = 200

/**
 * Copies an SQLite store as it is at one instant, while a relay goes on writing to it (SQLite: VACUUM INTO reads one
 * snapshot, https://www.sqlite.org/lang_vacuum.html). The copy is checked before it gets its name.
 * @throws StoreError when the store or the target cannot be used
 */
export function backUpSqlite(storePath: string, target: string): Counts {
  if (!existsSync(storePath)) throw new StoreError('unreadable', `there is no store at ${storePath}`)
  return writeWhole(target, (partial) => {
    const source = new Database(storePath, { timeout: 5_000 })
    try {
      vacuumInto(source, partial)
    } finally {
      source.close()
    }
  })
}

/** Copies a PostgreSQL store as it is at one instant, while its relays go on writing to it. @throws StoreError */
export async function backUpPostgres(url: string, target: string): Promise<Counts> {
  const partial = partialOf(target)
  const rowsPath = `${target}.rows`
  removeStore(rowsPath)
  const copy = openSqliteDatabase(rowsPath, 'process')
  const pool = openPool(url, 1)
  try {
    await inPostgresTransaction(pool, async (client) => {
      await client.query('SET TRANSACTION ISOLATION LEVEL REPEATABLE READ READ ONLY')
      for (const table of STORE_TABLES) await copyTable(client, table, copy)
    })
    return writeWhole(target, () => vacuumInto(copy, partial))
  } finally {
    await pool.end()
    copy.close()
    removeStore(rowsPath)
  }
}

async function copyTable(client: pg.PoolClient, table: StoreTable, copy: SqliteDatabase): Promise<void> {
  const order = [table.madeBy, ...table.key].filter(Boolean).join(', ')
  await client.query(`DECLARE rows_of_${table.name} NO SCROLL CURSOR FOR SELECT ${table.columns.join(', ')} FROM ${table.name} ORDER BY ${order}`)
  for (;;) {
    const { rows } = await client.query<Record<string, unknown>>(`FETCH ${BATCH_ROWS} FROM rows_of_${table.name}`)
    if (rows.length === 0) return
    insertRows(copy, table, rows)
  }
}

function insertRows(copy: SqliteDatabase, { name, columns }: StoreTable, rows: readonly Record<string, unknown>[]): void {
  const insert = copy.prepare(`INSERT INTO ${name} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`)
  inTransaction(copy, () => rows.forEach((row) => insert.run(columns.map((column) => row[column]))))
}

function vacuumInto(database: SqliteDatabase, path: string): void {
  database.exec(`VACUUM INTO '${path.replaceAll('\'', '\'\'')}'`)
}

function writeWhole(target: string, write: (partial: string) => void): Counts {
  const partial = partialOf(target)
  try {
    write(partial)
    return giveName(partial, target)
  } catch (thrown) {
    removeStore(partial)
    throw storeErrorOf(thrown)
  }
}

/** A backup half written never has the name that was asked for, and one that is there is never written over. */
function partialOf(target: string): string {
  if (existsSync(target)) throw new StoreError('other', `${target} is there already`)
  removeStore(`${target}.partial`)
  return `${target}.partial`
}

function giveName(partial: string, target: string): Counts {
  const copy = new Database(partial)
  let counts: Counts
  try {
    // One file, not three: a backup is carried about.
    pragma(copy, 'journal_mode = DELETE')
    settleUpdates(copy)
    const found = pragma(copy, 'integrity_check')
    if (found !== 'ok') throw new StoreError('unreadable', `the copy is damaged: ${String(found)}`)
    counts = countRows(copy)
  } finally {
    copy.close()
  }
  chmodSync(partial, 0o600)
  const file = openSync(partial, 'r+')
  fsyncSync(file)
  closeSync(file)
  renameSync(partial, target)
  return counts
}

/** Removes an SQLite file with those that may stand beside it. */
function removeStore(path: string): void {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${path}${end}`, { force: true })
}
