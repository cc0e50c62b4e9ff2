/** Why a store could not do what was asked, told apart because people are told different things. */
export type StoreTrouble = 'full' | 'read-only' | 'unreadable' | 'busy' | 'unreachable' | 'conflict' | 'closed' | 'other'

const WORDS: Record<StoreTrouble, string> = {
  full: 'The disk that keeps this job is full. Changes cannot be kept until there is room again.',
  'read-only': 'The disk that keeps this job cannot be written to. Changes cannot be kept until it can.',
  unreadable: 'The file that keeps this job cannot be read. It may be damaged: restore it from a copy.',
  busy: 'The file that keeps this job is in use by another program. Changes cannot be kept until it is free.',
  unreachable: 'The database that keeps this job cannot be reached. Changes cannot be kept until it can.',
  conflict: 'This was changed by somebody else at the same moment. Try again.',
  closed: 'The relay is shutting down. Changes are not kept any more.',
  other: 'This job cannot be kept at the moment. Changes cannot be kept until the relay is seen to.',
}

/** The one kind of error that a store throws. `message` is for the log; `words` are for people. */
export class StoreError extends Error {
  readonly trouble: StoreTrouble

  constructor(trouble: StoreTrouble, detail: string, options?: ErrorOptions) {
    super(`${trouble}: ${detail}`, options)
    this.name = 'StoreError'
    this.trouble = trouble
  }

  get words(): string {
    return WORDS[this.trouble]
  }
}

/** Any thrown value as a StoreError, so that one catch serves every store. */
export function asStoreError(thrown: unknown): StoreError {
  if (thrown instanceof StoreError) return thrown
  return new StoreError('other', thrown instanceof Error ? thrown.message : String(thrown), { cause: thrown })
}
