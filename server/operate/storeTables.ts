import type { SqliteDatabase } from '../store/sqliteDatabase.ts'

export interface StoreTable {
  readonly name: string
  readonly columns: readonly string[]
  /** What tells one row from every other of the table. */
  readonly key: readonly string[]
  /** In PostgreSQL: the order in which rows were made, where that says something. SQLite keeps it by itself. */
  readonly madeBy?: 'ordinal'
}

/**
 * Everything that a store keeps, whichever database keeps it; tables that others refer to first. A backup is an SQLite
 * file with these tables, so what one kind of store wrote another can take in.
 */
export const STORE_TABLES: readonly StoreTable[] = [
  { name: 'jobs', columns: ['job_id', 'created_ms', 'pen_seat_id'], key: ['job_id'] },
  {
    name: 'links', key: ['link_id'], madeBy: 'ordinal',
    columns: ['link_id', 'job_id', 'role', 'key_hash', 'created_ms', 'expires_ms', 'closed_ms', 'revoked_ms'],
  },
  { name: 'seats', columns: ['seat_id', 'job_id', 'link_id', 'role', 'name', 'secret_hash', 'created_ms'], key: ['seat_id'] },
  { name: 'updates', columns: ['job_id', 'document', 'sequence', 'bytes'], key: ['job_id', 'document', 'sequence'] },
  { name: 'kept', columns: ['job_id', 'hash', 'media_type', 'bytes'], key: ['job_id', 'hash'] },
  {
    name: 'sealed_votes', columns: ['job_id', 'ballot_id', 'seat_id', 'command_id', 'vote'],
    key: ['job_id', 'ballot_id', 'seat_id', 'command_id'], madeBy: 'ordinal',
  },
]

/** How many rows each table of an SQLite store has. */
export function countRows(database: SqliteDatabase): Readonly<Record<string, number>> {
  return Object.fromEntries(STORE_TABLES.map(({ name }) => {
    const [row] = database.prepare(`SELECT count(*) AS many FROM ${name}`).all() as { many: number }[]
    return [name, row?.many ?? 0]
  }))
}
