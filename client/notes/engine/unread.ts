import { nextSequence } from '../../../shared-core/notes/decide.ts'
import type { Stamp } from '../../../shared-core/notes/entries.ts'
import type { Notes } from '../../../shared-core/notes/notes.ts'

/** The place in the job's count of the last thing written; 0 before any. */
export function latestSequence(notes: Notes): number {
  return nextSequence(notes) - 1
}

export function seenUpTo(notes: Notes, seatId: string): number {
  return (Object.hasOwn(notes.seen, seatId) ? notes.seen[seatId]?.upTo : undefined) ?? 0
}

/** Whether somebody else wrote it since this person last looked. */
export function isUnread({ by }: { readonly by: Stamp }, seatId: string, upTo: number): boolean {
  return by.seatId !== seatId && by.sequence > upTo
}

/** What others have written since this person last looked, by kind: ids. Changes of state and drawn lines do not ask to be read. */
export interface Unread {
  readonly notes: readonly string[]
  readonly replies: readonly string[]
  readonly ballots: readonly string[]
  readonly thatOnes: readonly string[]
  readonly locks: readonly string[]
  readonly yeses: readonly string[]
  readonly count: number
}

export function unreadOf(notes: Notes, seatId: string): Unread {
  const upTo = seenUpTo(notes, seatId)
  const of = (kind: 'notes' | 'replies' | 'ballots' | 'thatOnes' | 'locks' | 'yeses') =>
    Object.entries<{ readonly by: Stamp }>(notes[kind]).filter(([, entry]) => isUnread(entry, seatId, upTo)).map(([id]) => id)
  const unread = { notes: of('notes'), replies: of('replies'), ballots: of('ballots'), thatOnes: of('thatOnes'), locks: of('locks'), yeses: of('yeses') }
  return { ...unread, count: Object.values(unread).reduce((sum, ids) => sum + ids.length, 0) }
}
