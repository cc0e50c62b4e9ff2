import type { NotesCommand } from '../../../shared-core/notes/command.ts'
import { decide, nextSequence, withWrites, type Brought } from '../../../shared-core/notes/decide.ts'
import type { Stamp } from '../../../shared-core/notes/entries.ts'
import type { Notes } from '../../../shared-core/notes/notes.ts'
import type { SeatInfo } from '../../connection/seat.ts'
import type { OutboxEntry } from './outboxShelf.ts'

/** What the page knows of the job while the relay has not answered. */
export interface OwnSide {
  readonly seat: SeatInfo
  readonly lookName: (lookId: string) => string
}

/**
 * The notes as they will be once the relay has done these commands, as far as a page can tell: it asks the same rules as
 * the relay. A lock, and the opening of a vote, are not laid over: what makes them is the relay's alone.
 */
export function layOver(kept: Notes, entries: readonly OutboxEntry[], own: OwnSide): Notes {
  if (entries.length === 0) return kept
  let notes = kept
  let sequence = nextSequence(kept)
  for (const entry of entries) {
    const decision = decideHere(notes, entry, own, sequence)
    if (decision === null || decision.writes.length === 0) continue
    notes = withWrites(notes, decision.writes)
    sequence += 1
  }
  return notes
}

/** Whether the document does not yet show a command that the relay has done. */
export function isStillToShow(kept: Notes, entry: OutboxEntry, own: OwnSide): boolean {
  const decision = decideHere(kept, entry, own, nextSequence(kept))
  return decision !== null && decision.writes.length > 0
}

function decideHere(notes: Notes, { command, writtenMs }: OutboxEntry, { seat, lookName }: OwnSide, sequence: number) {
  if (command.do === 'lock.make' || command.do === 'ballot.reveal') return null
  const by: Stamp = { seatId: seat.seatId, name: seat.name, role: seat.role, atMs: writtenMs, sequence }
  const decision = decide(notes, command, by, { jobId: seat.jobId, ...momentOf(command, lookName) })
  return decision.ok ? decision : null
}

function momentOf(command: NotesCommand, lookName: OwnSide['lookName']): Pick<Brought, 'moment'> {
  if (command.do !== 'that-one' || command.planHashSeen === null) return {}
  return { moment: { lookName: lookName(command.lookId), planHash: command.planHashSeen, asSeen: null } }
}
