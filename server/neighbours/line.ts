import type { StoreError } from '../store/storeError.ts'

/** Who stands at the end of a line. */
export interface LineEnd {
  /** Somebody said that, perhaps oneself. */
  heard(text: string): void
  /** The line is open, for the first time or again: what was said meanwhile is lost. */
  opened(): void
  /** Nothing is heard or carried until it is opened again. */
  lost(error: StoreError): void
}

/** Carries short texts to every relay on the same store. Texts may be lost; those that arrive do so in order. */
export interface Line {
  /** Opens the line, and opens it again whenever it is lost. @throws StoreError when it does not open at first */
  open(end: LineEnd): Promise<void>
  /** Says it without waiting. One that still waits under the same `place` is dropped for it. */
  say(text: string, place?: string): void
  /** Says what still waits, then ends. */
  close(): Promise<void>
}
