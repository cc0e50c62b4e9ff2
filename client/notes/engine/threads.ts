import type { NoteStateName } from '../../../shared-core/notes/command.ts'
import type { Note, NoteState, Reply, Stroke } from '../../../shared-core/notes/entries.ts'
import { inSequence, type Notes } from '../../../shared-core/notes/notes.ts'
import type { Pin } from '../../../shared-core/notes/pin.ts'
import { isUnread, seenUpTo } from './unread.ts'

/** A note with all that was said under it. */
export interface Thread {
  readonly id: string
  readonly note: Note
  readonly state: NoteStateName
  /** In the order they were written. */
  readonly replies: readonly { readonly id: string; readonly reply: Reply }[]
  /** The note or a reply is somebody else's, and new to this person. */
  readonly isUnread: boolean
}

/** All notes of a job, in the order they were written. */
export function threadsOf(notes: Notes, seatId: string): readonly Thread[] {
  const upTo = seenUpTo(notes, seatId)
  const latestStates = new Map<string, NoteState>()
  for (const [, change] of inSequence(notes, 'noteStates')) latestStates.set(change.noteId, change)
  const replies = new Map<string, Thread['replies'][number][]>()
  for (const [id, reply] of inSequence(notes, 'replies')) {
    replies.set(reply.noteId, [...(replies.get(reply.noteId) ?? []), { id, reply }])
  }
  return inSequence(notes, 'notes').map(([id, note]) => {
    const under = replies.get(id) ?? []
    const isNew = isUnread(note, seatId, upTo) || under.some(({ reply }) => isUnread(reply, seatId, upTo))
    return { id, note, state: latestStates.get(id)?.state ?? 'open', replies: under, isUnread: isNew }
  })
}

/** What a note can be asked for: the same thing as its pin names. */
export type PinnedThing =
  | { readonly on: 'light' | 'piece' | 'gel' | 'area'; readonly id: string }
  | { readonly on: 'subject' | 'floor' | 'frame' | 'look' }

/** Whether a pin hangs on this thing. An area has the notes on its colour and those on the subject nearest to it. */
export function isPinnedTo(pin: Pin, thing: PinnedThing): boolean {
  switch (pin.on) {
    case 'light': return thing.on === 'light' && pin.lightId === thing.id
    case 'piece': return thing.on === 'piece' && pin.pieceId === thing.id
    case 'gel': return (thing.on === 'gel' && pin.gelId === thing.id) || (thing.on === 'light' && pin.lightId === thing.id)
    case 'colour': return thing.on === 'area' && pin.areaId === thing.id
    case 'subject': return thing.on === 'subject' || (thing.on === 'area' && pin.areaId === thing.id)
    default: return pin.on === thing.on
  }
}

/** A drawn line that is still there. */
export type DrawnStroke = Extract<Stroke, { readonly removed: false }>

/** The lines drawn on a look, the earliest first. */
export function strokesOf(notes: Notes, lookId: string): readonly { readonly id: string; readonly stroke: DrawnStroke }[] {
  return inSequence(notes, 'strokes').flatMap(([id, stroke]) => (!stroke.removed && stroke.lookId === lookId ? [{ id, stroke }] : []))
}
