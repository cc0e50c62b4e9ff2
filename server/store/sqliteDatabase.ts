import Database from 'libsql'
import { MIGRATIONS } from './migrations.ts'
import { StoreError, type StoreTrouble } from './storeError.ts'

export type SqliteDatabase = InstanceType<typeof Database>
export type SqliteStatement = Database.Statement

/**
 * What an answered append outlives. `process`: the death of the relay (kill -9), at some tens of microseconds a commit.
 * `power`: the death of the machine too, since each commit then waits for the disk, ten times as long or more.
 */
export type Durability = 'process' | 'power'

/** SQLite's result codes, https://www.sqlite.org/rescode.html, by the trouble that people are told of. */
const TROUBLE_OF_CODE: Record<string, StoreTrouble> = {
  SQLITE_FULL: 'full',
  SQLITE_READONLY: 'read-only',
  SQLITE_CANTOPEN: 'read-only',
  SQLITE_PERM: 'read-only',
  SQLITE_CORRUPT: 'unreadable',
  SQLITE_NOTADB: 'unreadable',
  SQLITE_BUSY: 'busy',
  SQLITE_LOCKED: 'busy',
}

/** What SQLite threw, as a store's error. Extended codes such as SQLITE_BUSY_SNAPSHOT count as their family. */
export function storeErrorOf(thrown: unknown): StoreError {
  if (thrown instanceof StoreError) return thrown
  const message = thrown instanceof Error ? thrown.message : String(thrown)
  const code = (thrown as { code?: unknown } | null)?.code
  const family = typeof code === 'string' ? code.split('_').slice(0, 2).join('_') : ''
  const trouble = message.startsWith('ConnectionFailed') ? 'unreadable' : (TROUBLE_OF_CODE[family] ?? 'other')
  return new StoreError(trouble, message, { cause: thrown })
}

/**
 * Opens or makes the database file and leads it up to the present shape.
 * @throws StoreError `unreadable` when the file is damaged, no database, or of a newer release than this one.
 */
export function openSqliteDatabase(path: string, durability: Durability): SqliteDatabase {
  try {
    const database = new Database(path, { timeout: 2_000 })
    pragma(database, 'journal_mode = WAL')
    pragma(database, `synchronous = ${durability === 'power' ? 'FULL' : 'NORMAL'}`)
    pragma(database, 'foreign_keys = ON')
    migrate(database)
    return database
  } catch (thrown) {
    throw storeErrorOf(thrown)
  }
}

/**
 * Keeps every other relay off a database file: two on one file would each show people what the other does not know of.
 * The lock is SQLite's own on a file beside it, so it dies with the process however that dies, and programs that only
 * read or copy the database are not kept out. Returns the way to let go.
 * @throws StoreError `busy` when another process holds it, after waiting a little for one that is just stopping.
 */
export function holdAlone(path: string): () => void {
  try {
    const lock = new Database(`${path}-lock`, { timeout: 2_000 })
    lock.exec('BEGIN EXCLUSIVE')
    return () => {
      lock.exec('ROLLBACK')
      lock.close()
    }
  } catch (thrown) {
    throw storeErrorOf(thrown)
  }
}

/** Closes the database, leaving one file to copy. */
export function closeSqliteDatabase(database: SqliteDatabase): void {
  try {
    pragma(database, 'wal_checkpoint(TRUNCATE)')
  } catch {
    // Nothing is lost: what stands in the file beside it is read at the next opening.
  }
  database.close()
}

/** Runs one PRAGMA and gives the first column of its first row. (libsql's own `pragma` adds a column of its own.) */
export function pragma(database: SqliteDatabase, text: string): unknown {
  const [row] = database.prepare(`PRAGMA ${text}`).all() as Record<string, unknown>[]
  return row === undefined ? undefined : Object.values(row)[0]
}

/** Runs `work` in one transaction: all of it is kept or nothing. `work` must not await. */
export function inTransaction<Value>(database: SqliteDatabase, work: () => Value): Value {
  try {
    database.exec('BEGIN IMMEDIATE')
    const value = work()
    database.exec('COMMIT')
    return value
  } catch (thrown) {
    // SQLite has already rolled back by itself after some errors, a full disk among them.
    if (database.inTransaction) database.exec('ROLLBACK')
    throw storeErrorOf(thrown)
  }
}

function migrate(database: SqliteDatabase): void {
  database.exec('CREATE TABLE IF NOT EXISTS migrations (version INTEGER PRIMARY KEY, applied_ms INTEGER NOT NULL) STRICT')
  const [row] = database.prepare('SELECT max(version) AS newest FROM migrations').all() as { newest: number | null }[]
  const present = row?.newest ?? 0
  if (present > MIGRATIONS.length) {
    throw new StoreError('unreadable', `the store has shape ${present}, this release knows ${MIGRATIONS.length}`)
  }
  for (let version = present + 1; version <= MIGRATIONS.length; version++) {
    inTransaction(database, () => {
      database.exec(MIGRATIONS[version - 1] as string)
      database.prepare('INSERT INTO migrations (version, applied_ms) VALUES (?, ?)').run(version, Date.now())
    })
  }
}
