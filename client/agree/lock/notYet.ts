import type { NotesDraft } from '../../notes/engine/draft.ts'

/** What is said instead of yes: it holds the lock up, or asks before it is answered. */
export type InsteadOfYes = 'not-yet' | 'question'

export const INSTEAD_OF_YES_WORDS: Readonly<Record<InsteadOfYes, string>> = { 'not-yet': 'Not yet', 'question': 'Question' }

/** What is spoken about: a look, and its lock where there is one. */
export interface SpokenAbout {
  readonly lookId: string
  readonly lockNumber: number | null
}

/**
 * A note on the look that says "Not yet" or asks about it, naming the lock: it is read, answered and closed as every
 * other note. Sent by `useNotesStore().getState().send`, which gives null where the text is too long.
 */
export function insteadOfYes(kind: InsteadOfYes, { lookId, lockNumber }: SpokenAbout, text: string): NotesDraft {
  const about = lockNumber === null ? INSTEAD_OF_YES_WORDS[kind] : `${INSTEAD_OF_YES_WORDS[kind]}, lock ${lockNumber}`
  const said = text.trim()
  return { do: 'note.add', lookId, pin: { on: 'look' }, text: said === '' ? about : `${about}: ${said}` }
}
