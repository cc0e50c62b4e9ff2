import type { NotesCommand } from '../../../shared-core/notes/command.ts'
import type { Notes } from '../../../shared-core/notes/notes.ts'
import type { SeatInfo } from '../../connection/seat.ts'
import type { NotesDraft } from './draft.ts'
import type { Delivery } from './outbox.ts'
import type { OwnVotes } from './ownVotes.ts'

/** A command the relay will not do: its text stays with the person, to be copied or sent again. */
export interface RefusedCommand {
  readonly command: NotesCommand
  readonly words: string
  readonly mayTryAgain: boolean
}

/** Everything screens draw of notes, votes and locks, and all that can be said: an engine without React. */
export interface NotesBoard {
  readonly seat: SeatInfo
  /** What to draw: as the relay wrote it, with one's own commands on their way laid over. */
  readonly notes: Notes
  /** As the relay wrote it and nothing else: what is checked and judged. */
  readonly kept: Notes
  /** Whether the notes have arrived on this page, from this device or the relay; before, there only seem to be none. */
  readonly isHere: boolean
  /** One's own commands on their way, in order. A lock being made and a vote being opened are seen here alone. */
  readonly onTheWay: readonly NotesCommand[]
  /** Their ids, which are also the ids of the entries they make. */
  readonly onTheWayIds: ReadonlySet<string>
  readonly refused: readonly RefusedCommand[]
  readonly delivery: Delivery
  /** Whether what is on its way would survive a reload; if not, the page has to stay open until it is sent. */
  readonly outlivesPage: boolean
  readonly ownVotes: OwnVotes

  /** Says it: kept on this device at once, sent when it can be. The id of what it makes; null when the draft does not hold together. */
  send(draft: NotesDraft): string | null
  /** Says that all that is here was seen; does nothing when that was said. */
  markSeen(): void
  /** Sends a refused command once more. */
  again(id: string): void
  /** Drops a refused command. */
  forget(id: string): void
}
