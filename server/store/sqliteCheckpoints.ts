import AsyncDatabase from 'libsql/promise'
import { pragma, type SqliteDatabase } from './sqliteDatabase.ts'

/**
 * SQLite first writes beside the database file and copies from there when some megabytes have come together, waiting
 * for the disk: ten milliseconds and more, in which the relay would hear nobody. So they are copied by a connection of
 * their own, on a thread of its own, after so many commits.
 */
const COMMITS_BETWEEN = 500

/**
 * Pages of 4 kB. While edits come without a pause the file beside never quite empties; once it has grown this far the
 * next commit copies what is left of it, which is then little.
 */
const MOST_PAGES_BESIDE = 8_000

/** Keeps the file beside a SQLite database short without holding up whoever writes. */
export class SqliteCheckpoints {
  readonly #path: string
  #connection: AsyncDatabase | null = null
  #commits = 0
  #running: Promise<void> | null = null

  /** @param database the one connection that writes; it then copies only what would become too much */
  constructor(path: string, database: SqliteDatabase) {
    this.#path = path
    pragma(database, `wal_autocheckpoint = ${MOST_PAGES_BESIDE}`)
  }

  committed(): void {
    this.#commits += 1
    if (this.#commits < COMMITS_BETWEEN || this.#running !== null) return
    this.#commits = 0
    this.#running = this.#copy().finally(() => {
      this.#running = null
    })
  }

  /** Resolves when nothing of it holds the file any more. */
  async close(): Promise<void> {
    await this.#running
    this.#connection?.close()
    this.#connection = null
  }

  async #copy(): Promise<void> {
    try {
      this.#connection ??= new AsyncDatabase(this.#path, {})
      await this.#connection.exec('PRAGMA wal_checkpoint(PASSIVE)')
    } catch {
      // It is as well kept where it is. What is wrong with the disk the next append finds out, and says.
    }
  }
}
