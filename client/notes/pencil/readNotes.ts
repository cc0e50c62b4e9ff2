import { z } from 'zod'
import type { Notes } from '../../../shared-core/notes/notes.ts'
import { readKept, writeKept } from '../../connection/kept.ts'
import type { Thread } from '../engine/threads.ts'
import { latestSequence, seenUpTo, unreadOf } from '../engine/unread.ts'

/** Up to which place in the job's count this person has read each note's thread, by the note's id. */
export type ReadUpTo = Readonly<Record<string, number>>

const schema = z.record(z.string(), z.number())
const keyOf = (seatId: string): string => `halfstop.read.${seatId}`

/** As this device remembers it. */
export const readUpToKept = {
  of: (seatId: string): ReadUpTo => readKept(keyOf(seatId), schema, {}),
  keep: (seatId: string, read: ReadUpTo) => writeKept(keyOf(seatId), read),
}

/** Whether there is something in a thread that this person has not read, by the relay's word and this device's. */
export function isNewThread(thread: Thread, seatId: string, read: ReadUpTo): boolean {
  return thread.isUnread && lastOfOthers(thread, seatId) > (read[thread.id] ?? 0)
}

/** The place in the count of the last thing others said there, 0 for nothing: one's own may still be on its way, and have none yet. */
export function lastOfOthers({ note, replies }: Thread, seatId: string): number {
  return [note, ...replies.map(({ reply }) => reply)].reduce((last, { by }) => (by.seatId === seatId ? last : Math.max(last, by.sequence)), 0)
}

/**
 * How far "all up to here was seen" may be said to the relay: up to just before the first thing of others that was not
 * read. Votes and locks stand in the same count, and what nobody has looked at yet must not be passed over.
 * @param kept as the relay wrote them
 */
export function mayBeSaidSeen(kept: Notes, seatId: string, read: ReadUpTo): number {
  const unread = unreadOf(kept, seatId)
  const pending = [
    ...unread.notes.filter((id) => kept.notes[id]!.by.sequence > (read[id] ?? 0)).map((id) => kept.notes[id]!),
    ...unread.replies.map((id) => kept.replies[id]!).filter(({ noteId, by }) => by.sequence > (read[noteId] ?? 0)),
    ...unread.ballots.map((id) => kept.ballots[id]!), ...unread.thatOnes.map((id) => kept.thatOnes[id]!),
    ...unread.locks.map((id) => kept.locks[id]!), ...unread.yeses.map((id) => kept.yeses[id]!),
  ]
  const firstPending = pending.reduce((first, { by }) => Math.min(first, by.sequence), Infinity)
  return Math.max(seenUpTo(kept, seatId), Math.min(firstPending - 1, latestSequence(kept)))
}
