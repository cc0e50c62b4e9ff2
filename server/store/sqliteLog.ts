import type { DocumentKey, DocumentLog, KeptDocument } from './store.ts'
import { StoreError } from './storeError.ts'
import { inTransaction, storeErrorOf, type SqliteDatabase, type SqliteStatement } from './sqliteDatabase.ts'

interface PendingAppend {
  readonly key: DocumentKey
  readonly update: Uint8Array
  readonly onlyBehind: number | undefined
  readonly resolve: (sequence: number) => void
  readonly reject: (error: StoreError) => void
}

/** Job, document, sequence, bytes. */
type UpdateRow = readonly [string, string, number, Uint8Array]

/**
 * A commit holds the whole relay up for as long as it takes, some tens of microseconds on a quiet disk and far more on a
 * busy one, and most of that is not for the rows. With many rooms at once they are therefore shared: the next waits so
 * long for each append of the last beyond one, up to so long in all. A lone edit, and what one room says, never waits.
 */
const COMMIT_WAIT_MS_AN_APPEND = 2
const COMMIT_WAIT_MOST_MS = 12

/** One statement for several rows is a transaction of its own, and far cheaper than as many statements in one spelt out. */
const ROWS_A_STATEMENT = 40

/**
 * Updates are first kept one behind the other in a table of their own: where each has its place among those of its
 * document, every one would change a page of its own, and a commit writes whole pages. So many are then put in their
 * places together, which holds the relay up for some milliseconds.
 */
const SETTLE_ROWS = 2_000

const SETTLE = `
  INSERT INTO updates (job_id, document, sequence, bytes)
    SELECT job_id, document, sequence, bytes FROM recent_updates ORDER BY job_id, document, sequence;
  DELETE FROM recent_updates`

/** All updates, those in their places and those not yet; nothing is ever in both. */
const ALL_UPDATES = `(
  SELECT job_id, document, sequence, bytes FROM updates
  UNION ALL SELECT job_id, document, sequence, bytes FROM recent_updates)`

/** What to select from to see all updates of a store of whatever shape. @throws what SQLite throws */
export function allUpdatesOf(database: SqliteDatabase): string {
  return hasRecentUpdates(database) ? ALL_UPDATES : 'updates'
}

/** Puts all updates of a store of whatever shape in their places. @throws StoreError; nothing has happened then */
export function settleUpdates(database: SqliteDatabase): void {
  if (hasRecentUpdates(database)) inTransaction(database, () => database.exec(SETTLE))
}

function hasRecentUpdates(database: SqliteDatabase): boolean {
  return database.prepare('SELECT name FROM sqlite_schema WHERE name = ?').all('recent_updates').length > 0
}

/** Remembering so many documents' last sequences saves a query an append. */
const REMEMBERED_SEQUENCES = 10_000

/** The documents' logs in one SQLite database. Appends that wait, whatever their documents, share one commit. */
export class SqliteLog implements DocumentLog {
  readonly #database: SqliteDatabase
  readonly #onCommitted: () => void
  /** By the number of rows, each made when first needed. */
  readonly #inserts: (SqliteStatement | undefined)[] = []
  readonly #insertInPlace: SqliteStatement
  readonly #lastUpTo: SqliteStatement
  readonly #deleteUpTo: SqliteStatement
  #compacting: Promise<void> = Promise.resolve()
  readonly #lastSequences = new Map<string, number>()
  #pending: PendingAppend[] = []
  #nextCommitMs = -Infinity
  #recentRows = 0
  /** The documents that some of those rows are of; null where that is not known, since a relay that was killed may have left some. */
  #recentNames: Set<string> | null = null
  #settleAtRows = SETTLE_ROWS

  /** @param onCommitted told of every commit */
  constructor(database: SqliteDatabase, onCommitted: () => void) {
    this.#database = database
    this.#onCommitted = onCommitted
    this.#insertInPlace = database.prepare('INSERT INTO updates (job_id, document, sequence, bytes) VALUES (?, ?, ?, ?)')
    this.#lastUpTo = database.prepare('SELECT max(sequence) AS last FROM updates WHERE job_id = ? AND document = ? AND sequence <= ?')
    this.#deleteUpTo = database.prepare('DELETE FROM updates WHERE job_id = ? AND document = ? AND sequence <= ?')
    this.#settle()
  }

  async readDocument({ jobId, document }: DocumentKey, afterSequence = 0): Promise<KeptDocument> {
    try {
      const rows = this.#database.prepare(
        `SELECT sequence, bytes FROM ${this.#updatesOf(`${jobId}/${document}`)} WHERE job_id = ? AND document = ? AND sequence > ? ORDER BY sequence`)
        .all(jobId, document, afterSequence) as { sequence: number; bytes: ArrayBuffer }[]
      return { updates: rows.map((row) => new Uint8Array(row.bytes)), lastSequence: rows.at(-1)?.sequence ?? afterSequence }
    } catch (thrown) {
      throw storeErrorOf(thrown)
    }
  }

  append(key: DocumentKey, update: Uint8Array, onlyBehind?: number): Promise<number> {
    return new Promise((resolve, reject) => {
      this.#pending.push({ key, update, onlyBehind, resolve, reject })
      if (this.#pending.length === 1) this.#commitSoon()
    })
  }

  /** Each in a turn of the event loop of its own: when many rooms close at once, nobody elsewhere waits for all of them. */
  compact(key: DocumentKey, snapshot: Uint8Array, upToSequence: number): Promise<void> {
    const compacted = this.#compacting.then(() => new Promise((turn) => setImmediate(turn))).then(() => this.#compact(key, snapshot, upToSequence))
    this.#compacting = compacted.catch(() => { /* Its own caller hears of it. */ })
    return compacted
  }

  #compact({ jobId, document }: DocumentKey, snapshot: Uint8Array, upToSequence: number): void {
    const isRecent = this.#updatesOf(`${jobId}/${document}`) === ALL_UPDATES
    inTransaction(this.#database, () => {
      if (isRecent) this.#database.exec(SETTLE)
      const [row] = this.#lastUpTo.all(jobId, document, upToSequence) as { last: number | null }[]
      if (row === undefined || row.last === null) return
      this.#deleteUpTo.run(jobId, document, row.last)
      this.insert({ jobId, document }, row.last, snapshot)
    })
    if (isRecent) this.#noneRecent()
  }

  /** Puts one update in its place, where it is known to belong. @throws what SQLite throws */
  insert({ jobId, document }: DocumentKey, sequence: number, update: Uint8Array): void {
    this.#insertInPlace.run(jobId, document, sequence, update)
  }

  /** Keeps what waits, and leaves everything in its place. Where that cannot be, it is nevertheless kept. */
  finish(): void {
    this.commitPending()
    this.#settle()
  }

  #settleWhenMany(): void {
    if (this.#recentRows >= this.#settleAtRows) this.#settle()
  }

  #settle(): void {
    try {
      settleUpdates(this.#database)
      this.#noneRecent()
    } catch {
      // They are as well kept where they are; what is wrong is said when an append fails.
      this.#settleAtRows = this.#recentRows + SETTLE_ROWS
    }
  }

  #noneRecent(): void {
    this.#recentRows = 0
    this.#recentNames = new Set()
    this.#settleAtRows = SETTLE_ROWS
  }

  /** Where to look for a document's updates: among the recent ones there is no way but through all of them. */
  #updatesOf(name: string): string {
    return this.#recentNames === null || this.#recentNames.has(name) ? ALL_UPDATES : 'updates'
  }

  /** At the end of this turn of the event loop; a little later when many have only just been kept. */
  #commitSoon(): void {
    const waitMs = this.#nextCommitMs - performance.now()
    if (waitMs <= 0) setImmediate(() => this.commitPending())
    else setTimeout(() => this.commitPending(), waitMs)
  }

  /** One transaction for all that wait. Should it fail for one update's own fault, the others get one of their own. */
  commitPending(): void {
    const batch = this.#pending
    this.#pending = []
    if (batch.length === 0) return
    this.#nextCommitMs = performance.now() + Math.min((batch.length - 1) * COMMIT_WAIT_MS_AN_APPEND, COMMIT_WAIT_MOST_MS)
    try {
      const rows = batch.map((append) => this.#rowOf(append))
      this.#insertRows(rows)
      batch.forEach((append, index) => append.resolve((rows[index] as UpdateRow)[2]))
      // After they were shown.
      if (this.#recentRows >= this.#settleAtRows) setImmediate(() => this.#settleWhenMany())
    } catch (thrown) {
      // What was counted did not happen.
      this.#lastSequences.clear()
      const error = storeErrorOf(thrown)
      const isOwnFault = error.trouble === 'other' || error.trouble === 'conflict'
      for (const append of batch) {
        if (isOwnFault && batch.length > 1) this.#commitAlone(append)
        else append.reject(error)
      }
    }
  }

  #commitAlone(append: PendingAppend): void {
    try {
      const row = this.#rowOf(append)
      this.#insertRows([row])
      append.resolve(row[2])
    } catch (thrown) {
      this.#lastSequences.clear()
      append.reject(storeErrorOf(thrown))
    }
  }

  /** The row as which it is to be kept, counted from now on. @throws StoreError `conflict` */
  #rowOf({ key: { jobId, document }, update, onlyBehind }: PendingAppend): UpdateRow {
    const name = `${jobId}/${document}`
    const last = this.#lastSequences.get(name) ?? this.#lastSequence(jobId, document)
    if (onlyBehind !== undefined && last !== onlyBehind) throw new StoreError('conflict', 'the document has moved on')
    if (this.#lastSequences.size >= REMEMBERED_SEQUENCES) this.#lastSequences.clear()
    this.#lastSequences.set(name, last + 1)
    this.#recentNames?.add(name)
    return [jobId, document, last + 1, update]
  }

  #lastSequence(jobId: string, document: string): number {
    const [row] = this.#database.prepare(`SELECT max(sequence) AS last FROM ${this.#updatesOf(`${jobId}/${document}`)} WHERE job_id = ? AND document = ?`)
      .all(jobId, document) as { last: number | null }[]
    return row?.last ?? 0
  }

  /** All or none of them. */
  #insertRows(rows: readonly UpdateRow[]): void {
    if (rows.length <= ROWS_A_STATEMENT) this.#insertTogether(rows)
    else inTransaction(this.#database, () => {
      for (let at = 0; at < rows.length; at += ROWS_A_STATEMENT) this.#insertTogether(rows.slice(at, at + ROWS_A_STATEMENT))
    })
    this.#recentRows += rows.length
    this.#onCommitted()
  }

  #insertTogether(rows: readonly UpdateRow[]): void {
    const statement = this.#inserts[rows.length] ??= this.#database.prepare(
      `INSERT INTO recent_updates (job_id, document, sequence, bytes) VALUES ${rows.map(() => '(?, ?, ?, ?)').join(', ')}`)
    statement.run(rows.flat())
  }
}
