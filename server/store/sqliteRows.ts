import type { Role } from '../access/role.ts'
import type { LinkRecord, SeatRecord } from './store.ts'

/** Rows as SQLite gives them. Roles are held to the three by a CHECK of the table. */

export interface LinkRow {
  readonly link_id: string
  readonly job_id: string
  readonly role: Role
  readonly key_hash: ArrayBuffer
  readonly created_ms: number
  readonly expires_ms: number
  readonly closed_ms: number | null
  readonly revoked_ms: number | null
}

export function linkOfRow(row: LinkRow): LinkRecord {
  return {
    linkId: row.link_id,
    jobId: row.job_id,
    role: row.role,
    keyHash: new Uint8Array(row.key_hash),
    createdMs: row.created_ms,
    expiresMs: row.expires_ms,
    closedMs: row.closed_ms,
    revokedMs: row.revoked_ms,
  }
}

export const SEAT_COLUMNS = 'seat_id, job_id, link_id, role, name, secret_hash, created_ms'

export interface SeatRow {
  readonly seat_id: string
  readonly job_id: string
  readonly link_id: string
  readonly role: Role
  readonly name: string
  readonly secret_hash: ArrayBuffer
  readonly created_ms: number
}

export function seatOfRow(row: SeatRow): SeatRecord {
  return {
    seatId: row.seat_id,
    jobId: row.job_id,
    linkId: row.link_id,
    role: row.role,
    name: row.name,
    secretHash: new Uint8Array(row.secret_hash),
    createdMs: row.created_ms,
  }
}
