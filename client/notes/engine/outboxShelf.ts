import type { NotesCommand } from '../../../shared-core/notes/command.ts'

/** Why the relay will not do a command. */
export interface Refused {
  readonly words: string
  /** The same command may be taken another time. */
  readonly mayTryAgain: boolean
}

export interface OutboxEntry {
  readonly command: NotesCommand
  /** By this device's clock, to be shown until the relay has stamped it; nothing is decided by it. */
  readonly writtenMs: number
  /** Null while it is on its way. */
  readonly refused: Refused | null
}

/** Where an outbox lies between being written and being answered: one a seat, shared by all pages of that seat. */
export interface OutboxShelf {
  /** In the order they were put. */
  read(): Promise<readonly OutboxEntry[]>
  /** Puts it at the end; resolves when it would survive a reload, or is known not to. An id that lies there already stays as it is. */
  put(entry: OutboxEntry): Promise<void>
  /** Says that it was refused, or takes that back; nothing where it is gone meanwhile. */
  mark(id: string, refused: Refused | null): Promise<void>
  remove(ids: readonly string[]): Promise<void>
  /** Whether all that lies there would survive a reload. */
  outlivesPage(): boolean
  /** Calls when another page of this seat has changed it; returns how to stop. */
  onOtherPage(listener: () => void): () => void
  close(): void
}
