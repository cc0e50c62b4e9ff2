import type { DocumentKey, JobRecord, KeptDocument, LinkRecord, NewJob, SeatRecord, Store } from './store.ts'
import { StoreError } from './storeError.ts'
import { inTransaction, openSqliteDatabase, pragma, storeErrorOf, type Durability, type SqliteDatabase, type SqliteStatement } from './sqliteDatabase.ts'
import { linkOfRow, SEAT_COLUMNS, seatOfRow, type LinkRow, type SeatRow } from './sqliteRows.ts'

interface PendingAppend {
  readonly key: DocumentKey
  readonly update: Uint8Array
  readonly resolve: (sequence: number) => void
  readonly reject: (error: StoreError) => void
}

/** A probe must need about as much room as an edit does, or it would say yes on a disk with a few bytes left. */
const PROBE_BYTES = 8_192

/** SQLite's own limit, https://www.sqlite.org/limits.html */
const MOST_PAGES = 4_294_967_294

// Two statements and no RETURNING: libsql reports a failure of such an insert only at the statement's next use.
const LAST_SEQUENCE = 'SELECT coalesce(max(sequence), 0) AS last FROM updates WHERE job_id = ? AND document = ?'
const INSERT_UPDATE = 'INSERT INTO updates (job_id, document, sequence, bytes) VALUES (?, ?, ?, ?)'

/**
 * Keeps everything in one SQLite file in write-ahead mode. Appends of one turn of the event loop, whatever their
 * documents, share one transaction.
 */
export class SqliteStore implements Store {
  readonly #database: SqliteDatabase
  readonly #lastSequenceStatement: SqliteStatement
  readonly #insertUpdateStatement: SqliteStatement
  #pending: PendingAppend[] = []
  #closed = false

  /** @throws StoreError `unreadable` when the file is damaged, no database, or of a newer release. */
  constructor(path: string, durability: Durability = 'process') {
    this.#database = openSqliteDatabase(path, durability)
    this.#lastSequenceStatement = this.#database.prepare(LAST_SEQUENCE)
    this.#insertUpdateStatement = this.#database.prepare(INSERT_UPDATE)
  }

  /** Lets the file grow no larger than that; beyond it the store is full. Null takes the limit away. */
  limitBytes(maxBytes: number | null): void {
    const pageBytes = Number(pragma(this.#database, 'page_size'))
    pragma(this.#database, `max_page_count = ${maxBytes === null ? MOST_PAGES : Math.ceil(maxBytes / pageBytes)}`)
  }

  async readDocument({ jobId, document }: DocumentKey): Promise<KeptDocument> {
    const rows = this.#all<{ sequence: number; bytes: ArrayBuffer }>(
      'SELECT sequence, bytes FROM updates WHERE job_id = ? AND document = ? ORDER BY sequence', jobId, document)
    return { updates: rows.map((row) => new Uint8Array(row.bytes)), lastSequence: rows.at(-1)?.sequence ?? 0 }
  }

  append(key: DocumentKey, update: Uint8Array): Promise<number> {
    return new Promise((resolve, reject) => {
      if (this.#closed) return reject(new StoreError('closed', 'the store was closed'))
      this.#pending.push({ key, update, resolve, reject })
      if (this.#pending.length === 1) setImmediate(() => this.#commitPending())
    })
  }

  async compact({ jobId, document }: DocumentKey, snapshot: Uint8Array, upToSequence: number): Promise<void> {
    this.#transact(() => {
      const [row] = this.#all<{ last: number | null }>(
        'SELECT max(sequence) AS last FROM updates WHERE job_id = ? AND document = ? AND sequence <= ?',
        jobId, document, upToSequence)
      if (row === undefined || row.last === null) return
      this.#database.prepare('DELETE FROM updates WHERE job_id = ? AND document = ? AND sequence <= ?')
        .run(jobId, document, row.last)
      this.#insertUpdateStatement.run(jobId, document, row.last, snapshot)
    })
  }

  async createJob({ jobId, createdMs, links, documents }: NewJob): Promise<void> {
    this.#transact(() => {
      this.#database.prepare('INSERT INTO jobs (job_id, created_ms) VALUES (?, ?)').run(jobId, createdMs)
      for (const link of links) this.#insertLink(link)
      for (const { document, update } of documents) this.#insertUpdate({ jobId, document }, update)
    })
  }

  async job(jobId: string): Promise<JobRecord | null> {
    const [row] = this.#all<{ job_id: string; created_ms: number; pen_seat_id: string | null }>(
      'SELECT job_id, created_ms, pen_seat_id FROM jobs WHERE job_id = ?', jobId)
    return row === undefined ? null : { jobId: row.job_id, createdMs: row.created_ms, penSeatId: row.pen_seat_id }
  }

  async setPen(jobId: string, penSeatId: string | null): Promise<void> {
    this.#run('UPDATE jobs SET pen_seat_id = ? WHERE job_id = ?', penSeatId, jobId)
  }

  async linksOf(jobId: string): Promise<readonly LinkRecord[]> {
    return this.#all<LinkRow>('SELECT * FROM links WHERE job_id = ? ORDER BY rowid', jobId).map(linkOfRow)
  }

  async link(linkId: string): Promise<LinkRecord | null> {
    const [row] = this.#all<LinkRow>('SELECT * FROM links WHERE link_id = ?', linkId)
    return row === undefined ? null : linkOfRow(row)
  }

  async addLink(link: LinkRecord): Promise<void> {
    this.#transact(() => this.#insertLink(link))
  }

  async endLink(linkId: string, ended: { readonly closedMs?: number; readonly revokedMs?: number }): Promise<void> {
    this.#run(
      'UPDATE links SET closed_ms = coalesce(closed_ms, ?), revoked_ms = coalesce(revoked_ms, ?) WHERE link_id = ?',
      ended.closedMs ?? null, ended.revokedMs ?? null, linkId)
  }

  async addSeat(seat: SeatRecord): Promise<void> {
    this.#run(`INSERT INTO seats (${SEAT_COLUMNS}) VALUES (?, ?, ?, ?, ?, ?, ?)`,
      seat.seatId, seat.jobId, seat.linkId, seat.role, seat.name, seat.secretHash, seat.createdMs)
  }

  async seat(seatId: string): Promise<SeatRecord | null> {
    const [row] = this.#all<SeatRow>(`SELECT ${SEAT_COLUMNS} FROM seats WHERE seat_id = ?`, seatId)
    return row === undefined ? null : seatOfRow(row)
  }

  async seatCount(linkId: string): Promise<number> {
    const [row] = this.#all<{ seats: number }>('SELECT count(*) AS seats FROM seats WHERE link_id = ?', linkId)
    return row?.seats ?? 0
  }

  async moveSeat(seatId: string, linkId: string): Promise<void> {
    this.#run('UPDATE seats SET link_id = ? WHERE seat_id = ?', linkId, seatId)
  }

  async renameSeat(seatId: string, name: string): Promise<void> {
    this.#run('UPDATE seats SET name = ? WHERE seat_id = ?', name, seatId)
  }

  async probe(): Promise<void> {
    this.#transact(() => {
      this.#database.prepare('INSERT INTO probe (only_row, bytes) VALUES (1, ?)').run([new Uint8Array(PROBE_BYTES)])
      this.#database.exec('DELETE FROM probe')
    })
  }

  async close(): Promise<void> {
    if (this.#closed) return
    this.#commitPending()
    this.#closed = true
    // Leaves one file to copy. A failure costs nothing: the write-ahead file beside it is read at the next opening.
    try { pragma(this.#database, 'wal_checkpoint(TRUNCATE)') } catch { /* see above */ }
    this.#database.close()
  }

  /** One transaction for all that wait. Should it fail for one update's own fault, the others get one of their own. */
  #commitPending(): void {
    const batch = this.#pending
    this.#pending = []
    if (batch.length === 0) return
    try {
      const sequences = this.#transact(() => batch.map(({ key, update }) => this.#insertUpdate(key, update)))
      batch.forEach((append, index) => append.resolve(sequences[index] as number))
    } catch (thrown) {
      const error = storeErrorOf(thrown)
      if (error.trouble === 'other' && batch.length > 1) return batch.forEach((append) => this.#commitAlone(append))
      batch.forEach((append) => append.reject(error))
    }
  }

  #commitAlone({ key, update, resolve, reject }: PendingAppend): void {
    try {
      resolve(this.#transact(() => this.#insertUpdate(key, update)))
    } catch (thrown) {
      reject(storeErrorOf(thrown))
    }
  }

  #insertUpdate({ jobId, document }: DocumentKey, update: Uint8Array): number {
    const [row] = this.#lastSequenceStatement.all(jobId, document) as { last: number }[]
    const sequence = (row?.last ?? 0) + 1
    this.#insertUpdateStatement.run(jobId, document, sequence, update)
    return sequence
  }

  #insertLink(link: LinkRecord): void {
    this.#database.prepare(`
      INSERT INTO links (link_id, job_id, role, key_hash, created_ms, expires_ms, closed_ms, revoked_ms)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?)`).run(link.linkId, link.jobId, link.role, link.keyHash,
      link.createdMs, link.expiresMs, link.closedMs, link.revokedMs)
  }

  #transact<Value>(work: () => Value): Value {
    this.#mustBeOpen()
    return inTransaction(this.#database, work)
  }

  #run(sql: string, ...values: readonly unknown[]): void {
    this.#transact(() => this.#database.prepare(sql).run(...values))
  }

  #all<Row>(sql: string, ...values: readonly unknown[]): Row[] {
    this.#mustBeOpen()
    try {
      return this.#database.prepare(sql).all(...values) as Row[]
    } catch (thrown) {
      throw storeErrorOf(thrown)
    }
  }

  #mustBeOpen(): void {
    if (this.#closed) throw new StoreError('closed', 'the store was closed')
  }
}
