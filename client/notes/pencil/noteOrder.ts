import type { Thread } from '../engine/threads.ts'

/** A thread with the number its mark carries. */
export interface NumberedThread extends Thread {
  /** 1, 2, 3 … in the order the job's notes were written. */
  readonly number: number
}

/** A job's notes as its list shows them. */
export interface NoteList {
  /** New to this person first, then what is open, then what was answered; in each the last spoken of first. */
  readonly first: readonly NumberedThread[]
  /** Closed ones with nothing new in them, folded; the last closed of first. */
  readonly closed: readonly NumberedThread[]
}

/** @param isNew whether this person has not read all of it yet */
export function noteList(threads: readonly Thread[], isNew: (thread: Thread) => boolean): NoteList {
  const numbered = numberedThreads(threads)
  const rank = (thread: Thread): number => (isNew(thread) ? 0 : thread.state === 'open' ? 1 : 2)
  const inOrder = [...numbered].sort((a, b) => rank(a) - rank(b) || lastSequence(b) - lastSequence(a))
  const isFolded = (thread: Thread): boolean => thread.state === 'closed' && !isNew(thread)
  return { first: inOrder.filter((thread) => !isFolded(thread)), closed: inOrder.filter(isFolded) }
}

/** @param threads in the order they were written, all of the job */
export function numberedThreads(threads: readonly Thread[]): readonly NumberedThread[] {
  return threads.map((thread, index) => ({ ...thread, number: index + 1 }))
}

/** The place in the job's count of the last thing said in a thread. */
export function lastSequence({ note, replies }: Thread): number {
  return replies.reduce((last, { reply }) => Math.max(last, reply.by.sequence), note.by.sequence)
}

/** The thread one step on in the list's own order; null at its end. */
export function threadBeside(list: NoteList, id: string, step: 1 | -1): NumberedThread | null {
  const all = [...list.first, ...list.closed]
  const at = all.findIndex((thread) => thread.id === id)
  return at < 0 ? null : (all[at + step] ?? null)
}
