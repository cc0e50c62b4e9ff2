import type { DocumentKey } from './store.ts'
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
 * busy one. With many rooms at once they are therefore shared: the next waits 1 ms for each append of the last, up to
 * this. A lone edit, and what few rooms say, hardly waits.
 */
const COMMIT_EVERY_MS = 8

/** One statement for several rows is a transaction of its own, and far cheaper than as many statements in one spelt out. */
const ROWS_A_STATEMENT = 40

/** Remembering so many documents' last sequences saves a query an append. */
const REMEMBERED_SEQUENCES = 10_000

/** Appends to the documents' logs in one SQLite database; those that wait, whatever their documents, share one commit. */
export class SqliteAppends {
  readonly #database: SqliteDatabase
  /** By the number of rows, each made when first needed. */
  readonly #inserts: (SqliteStatement | undefined)[] = []
  readonly #lastSequenceStatement: SqliteStatement
  readonly #lastSequences = new Map<string, number>()
  #pending: PendingAppend[] = []
  #nextCommitMs = -Infinity

  constructor(database: SqliteDatabase) {
    this.#database = database
    this.#lastSequenceStatement = database.prepare('SELECT max(sequence) AS last FROM updates WHERE job_id = ? AND document = ?')
  }

  /** See {@link DocumentLog.append}. */
  append(key: DocumentKey, update: Uint8Array, onlyBehind?: number): Promise<number> {
    return new Promise((resolve, reject) => {
      this.#pending.push({ key, update, onlyBehind, resolve, reject })
      if (this.#pending.length === 1) this.#commitSoon()
    })
  }

  /** Inserts one update where it is known to belong. @throws what SQLite throws */
  insert({ jobId, document }: DocumentKey, sequence: number, update: Uint8Array): void {
    this.#insertRows([[jobId, document, sequence, update]])
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
    this.#nextCommitMs = performance.now() + Math.min(batch.length - 1, COMMIT_EVERY_MS)
    try {
      const rows = batch.map((append) => this.#rowOf(append))
      this.#insertRows(rows)
      batch.forEach((append, index) => append.resolve((rows[index] as UpdateRow)[2]))
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
    return [jobId, document, last + 1, update]
  }

  #lastSequence(jobId: string, document: string): number {
    const [row] = this.#lastSequenceStatement.all(jobId, document) as { last: number | null }[]
    return row?.last ?? 0
  }

  /** All or none of them. */
  #insertRows(rows: readonly UpdateRow[]): void {
    if (rows.length <= ROWS_A_STATEMENT) return this.#insertTogether(rows)
    inTransaction(this.#database, () => {
      for (let at = 0; at < rows.length; at += ROWS_A_STATEMENT) this.#insertTogether(rows.slice(at, at + ROWS_A_STATEMENT))
    })
  }

  #insertTogether(rows: readonly UpdateRow[]): void {
    const statement = this.#inserts[rows.length] ??= this.#database.prepare(
      `INSERT INTO updates (job_id, document, sequence, bytes) VALUES ${rows.map(() => '(?, ?, ?, ?)').join(', ')}`)
    statement.run(rows.flat())
  }
}
