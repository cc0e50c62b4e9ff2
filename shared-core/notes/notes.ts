import { ENTRY_KINDS, ENTRY_SCHEMAS, type EntryKind, type EntryOf } from './entries.ts'
import { NOTES_LIMITS } from './limits.ts'
import type { NoteStateName } from './command.ts'
import { idText } from '../plan/schema/quantities.ts'

/** Everything a notes document holds, by kind and id. `seen` is by seat. */
export type Notes = { readonly [Kind in EntryKind]: { readonly [id: string]: EntryOf<Kind> } }

export interface NotesReading {
  readonly notes: Notes
  /** How many entries could not be read and were left out. */
  readonly leftOut: number
}

export const noNotes: Notes = {
  notes: {}, replies: {}, noteStates: {}, strokes: {}, seen: {}, ballots: {}, thatOnes: {}, screenChecks: {}, locks: {}, yeses: {},
}

/** Entries already judged as what they stand for, so that a page that reads after each change checks each of them once. */
const judged = new Map<EntryKind, WeakMap<object, boolean>>(ENTRY_KINDS.map((kind) => [kind, new WeakMap()]))

/**
 * The notes in a document's plain content, whatever it is: entries that do not hold together are left out and counted,
 * records past their limit are cut. An unchanged entry comes back as the same object.
 */
export function readNotes(raw: unknown): NotesReading {
  let leftOut = 0
  const notes = Object.fromEntries(ENTRY_KINDS.map((kind) => {
    const entries = Object.entries(group(isGroup(raw) && Object.hasOwn(raw, kind) ? raw[kind] : undefined))
    const sound = entries.filter(([id, entry]) => isSound(kind, id, entry)).slice(0, NOTES_LIMITS[kind])
    leftOut += entries.length - sound.length
    return [kind, Object.fromEntries(sound)]
  })) as unknown as Notes
  return { notes, leftOut }
}

/** The state of a note: the latest change of it, or open. */
export function stateOfNote(notes: Notes, noteId: string): NoteStateName {
  let latest: EntryOf<'noteStates'> | null = null
  for (const change of Object.values(notes.noteStates)) {
    if (change.noteId === noteId && (latest === null || change.by.sequence > latest.by.sequence)) latest = change
  }
  return latest?.state ?? 'open'
}

/** An entry of any kind with its id, in the order the relay wrote them. */
export function inSequence<Kind extends Exclude<EntryKind, 'seen'>>(notes: Notes, kind: Kind): readonly (readonly [string, EntryOf<Kind>])[] {
  const entries = Object.entries(notes[kind]) as [string, EntryOf<Kind> & { by: { sequence: number } }][]
  return entries.sort(([, a], [, b]) => a.by.sequence - b.by.sequence)
}

/** The lock that took this one's place: a later one of the same look; null while it stands. */
export function supersededBy(notes: Notes, lockId: string): string | null {
  const lock = notes.locks[lockId]
  if (lock === undefined) return null
  const later = inSequence(notes, 'locks').filter(([, other]) => other.lookId === lock.lookId && other.number > lock.number)
  return later.at(0)?.[0] ?? null
}

function isSound(kind: EntryKind, id: string, entry: unknown): boolean {
  if (typeof entry !== 'object' || entry === null) return false
  if (!idText.safeParse(id).success) return false
  const known = judged.get(kind)?.get(entry)
  if (known !== undefined) return known
  const sound = ENTRY_SCHEMAS[kind].safeParse(entry).success
  judged.get(kind)?.set(entry, sound)
  return sound
}

function group(value: unknown): Readonly<Record<string, unknown>> {
  return isGroup(value) ? value : {}
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
