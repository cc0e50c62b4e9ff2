import type { DocumentKey, JobRecord, KeptDocument, KeptThing, LinkRecord, NewJob, SealedVote, SeatRecord, Store } from './store.ts'
import { StoreError } from './storeError.ts'
import { closeSqliteDatabase, holdAlone, inTransaction, openSqliteDatabase, pragma, storeErrorOf, type Durability, type SqliteDatabase } from './sqliteDatabase.ts'
import { SqliteCheckpoints } from './sqliteCheckpoints.ts'
import { SqliteLog } from './sqliteLog.ts'
import { linkOfRow, SEAT_COLUMNS, seatOfRow, type LinkRow, type SeatRow } from './sqliteRows.ts'

/** A probe must need about as much room as an edit does, or it would say yes on a disk with a few bytes left. */
const PROBE_BYTES = 8_192

/** SQLite's own limit, https://www.sqlite.org/limits.html */
const MOST_PAGES = 4_294_967_294

/**
 * Keeps everything in one SQLite file in write-ahead mode. Appends of one turn of the event loop, whatever their
 * documents, share one transaction.
 */
export class SqliteStore implements Store {
  readonly #letGo: () => void
  readonly #database: SqliteDatabase
  readonly #checkpoints: SqliteCheckpoints
  readonly #log: SqliteLog
  #closed = false

  /**
   * @throws StoreError `unreadable` when the file is damaged, no database, or of a newer release; `busy` when another
   * relay has it open.
   */
  constructor(path: string, durability: Durability = 'process') {
    this.#letGo = holdAlone(path)
    try {
      this.#database = openSqliteDatabase(path, durability)
    } catch (thrown) {
      this.#letGo()
      throw thrown
    }
    this.#checkpoints = new SqliteCheckpoints(path, this.#database)
    this.#log = new SqliteLog(this.#database, () => this.#checkpoints.committed())
  }

  /** Lets the file grow no larger than that; beyond it the store is full. Null takes the limit away. */
  limitBytes(maxBytes: number | null): void {
    const pageBytes = Number(pragma(this.#database, 'page_size'))
    pragma(this.#database, `max_page_count = ${maxBytes === null ? MOST_PAGES : Math.ceil(maxBytes / pageBytes)}`)
  }

  readDocument(key: DocumentKey, afterSequence = 0): Promise<KeptDocument> {
    return this.#askLog((log) => log.readDocument(key, afterSequence))
  }

  append(key: DocumentKey, update: Uint8Array, onlyBehind?: number): Promise<number> {
    return this.#askLog((log) => log.append(key, update, onlyBehind))
  }

  compact(key: DocumentKey, snapshot: Uint8Array, upToSequence: number): Promise<void> {
    return this.#askLog((log) => log.compact(key, snapshot, upToSequence))
  }

  async createJob({ jobId, createdMs, links, documents }: NewJob): Promise<void> {
    this.#transact(() => {
      this.#database.prepare('INSERT INTO jobs (job_id, created_ms) VALUES (?, ?)').run(jobId, createdMs)
      for (const link of links) this.#insertLink(link)
      for (const { document, update } of documents) this.#log.insert({ jobId, document }, 1, update)
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

  async seatsOf(linkId: string): Promise<readonly SeatRecord[]> {
    return this.#all<SeatRow>(`SELECT ${SEAT_COLUMNS} FROM seats WHERE link_id = ? ORDER BY created_ms, seat_id`, linkId).map(seatOfRow)
  }

  async moveSeat(seatId: string, linkId: string): Promise<void> {
    this.#run('UPDATE seats SET link_id = ? WHERE seat_id = ?', linkId, seatId)
  }

  async renameSeat(seatId: string, name: string): Promise<void> {
    this.#run('UPDATE seats SET name = ? WHERE seat_id = ?', name, seatId)
  }

  async keep(jobId: string, { hash, mediaType, bytes }: KeptThing): Promise<void> {
    this.#run('INSERT INTO kept (job_id, hash, media_type, bytes) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING', jobId, hash, mediaType, bytes)
  }

  async kept(jobId: string, hash: string): Promise<KeptThing | null> {
    const [row] = this.#all<{ media_type: string; bytes: ArrayBuffer }>(
      'SELECT media_type, bytes FROM kept WHERE job_id = ? AND hash = ?', jobId, hash)
    return row === undefined ? null : { hash, mediaType: row.media_type, bytes: new Uint8Array(row.bytes) }
  }

  async keptTotal(jobId: string): Promise<{ things: number; bytes: number }> {
    const [row] = this.#all<{ things: number; bytes: number }>(
      'SELECT count(*) AS things, coalesce(sum(length(bytes)), 0) AS bytes FROM kept WHERE job_id = ?', jobId)
    return { things: row?.things ?? 0, bytes: row?.bytes ?? 0 }
  }

  async sealVote(jobId: string, { ballotId, seatId, commandId, vote }: SealedVote): Promise<void> {
    this.#run('INSERT INTO sealed_votes (job_id, ballot_id, seat_id, command_id, vote) VALUES (?, ?, ?, ?, ?) ON CONFLICT DO NOTHING',
      jobId, ballotId, seatId, commandId, vote)
  }

  async sealedVotes(jobId: string, ballotId: string): Promise<readonly SealedVote[]> {
    return this.#all<{ seat_id: string; command_id: string; vote: string }>(`
      SELECT seat_id, command_id, vote FROM sealed_votes AS mine
      WHERE job_id = ? AND ballot_id = ? AND rowid = (
        SELECT max(rowid) FROM sealed_votes
        WHERE job_id = mine.job_id AND ballot_id = mine.ballot_id AND seat_id = mine.seat_id)
      ORDER BY (SELECT min(rowid) FROM sealed_votes
        WHERE job_id = mine.job_id AND ballot_id = mine.ballot_id AND seat_id = mine.seat_id)`, jobId, ballotId)
      .map((row) => ({ ballotId, seatId: row.seat_id, commandId: row.command_id, vote: row.vote }))
  }

  async probe(): Promise<void> {
    this.#transact(() => {
      this.#database.prepare('INSERT INTO probe (only_row, bytes) VALUES (1, ?)').run([new Uint8Array(PROBE_BYTES)])
      this.#database.exec('DELETE FROM probe')
    })
  }

  async close(): Promise<void> {
    if (this.#closed) return
    this.#log.finish()
    this.#closed = true
    await this.#checkpoints.close()
    closeSqliteDatabase(this.#database)
    this.#letGo()
  }

  #insertLink(link: LinkRecord): void {
    this.#database.prepare(`
      INSERT INTO links (link_id, job_id, role, key_hash, created_ms, expires_ms, closed_ms, revoked_ms)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?)`).run(link.linkId, link.jobId, link.role, link.keyHash,
      link.createdMs, link.expiresMs, link.closedMs, link.revokedMs)
  }

  #askLog<Value>(ask: (log: SqliteLog) => Promise<Value>): Promise<Value> {
    return this.#closed ? Promise.reject(new StoreError('closed', 'the store was closed')) : ask(this.#log)
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
