import type { DocumentName, Role } from './role.ts'

/** A person's place at a job, as the relay knows it while they are there. */
export interface Seat {
  readonly seatId: string
  readonly jobId: string
  readonly linkId: string
  readonly role: Role
  readonly name: string
  /** When the link it came by runs out, and the seat with it. */
  readonly expiresMs: number
}

/** The client's seat that holds the pen; null while it is with the photographer. */
export type Pen = { readonly seatId: string; readonly name: string } | null

/**
 * Whether this seat may change that document right now: photographer and assistant always, a client while holding the
 * pen; notes nobody, since the relay alone writes them.
 */
export function mayWrite(seat: Seat, document: DocumentName, pen: Pen): boolean {
  if (document === 'notes') return false
  return seat.role !== 'client' || pen?.seatId === seat.seatId
}
