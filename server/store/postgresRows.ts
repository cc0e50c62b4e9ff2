import type { Role } from '../access/role.ts'
import type { LinkRecord, SeatRecord } from './store.ts'

/** Rows as PostgreSQL gives them. Roles are held to the three by a CHECK of the table. */

export interface PostgresLinkRow {
  readonly link_id: string
  readonly job_id: string
  readonly role: Role
  readonly key_hash: Buffer
  readonly created_ms: number
  readonly expires_ms: number
  readonly closed_ms: number | null
  readonly revoked_ms: number | null
}

export function linkOfPostgresRow(row: PostgresLinkRow): LinkRecord {
  return {
    linkId: row.link_id, jobId: row.job_id, role: row.role, keyHash: plainBytes(row.key_hash),
    createdMs: row.created_ms, expiresMs: row.expires_ms, closedMs: row.closed_ms, revokedMs: row.revoked_ms,
  }
}

export interface PostgresSeatRow {
  readonly seat_id: string
  readonly job_id: string
  readonly link_id: string
  readonly role: Role
  readonly name: string
  readonly secret_hash: Buffer
  readonly created_ms: number
}

export function seatOfPostgresRow(row: PostgresSeatRow): SeatRecord {
  return {
    seatId: row.seat_id, jobId: row.job_id, linkId: row.link_id, role: row.role, name: row.name,
    secretHash: plainBytes(row.secret_hash), createdMs: row.created_ms,
  }
}

/** The same bytes without what Buffer adds. */
export function plainBytes(buffer: Buffer): Uint8Array {
  return new Uint8Array(buffer.buffer, buffer.byteOffset, buffer.byteLength)
}
