import type { DocumentKey } from './store.ts'
import { StoreError } from './storeError.ts'

/** One update on its way into a log. */
export interface PendingAppend {
  readonly key: DocumentKey
  readonly update: Uint8Array
  /** See {@link DocumentLog.append}. */
  readonly onlyBehind: number | undefined
}

interface Waiting extends PendingAppend {
  readonly resolve: (sequence: number) => void
  readonly reject: (error: StoreError) => void
}

/** A batch whose bytes would come to more than this is split: it is one message to the database. */
const BATCH_BYTES = 8_000_000
const BATCH_UPDATES = 2_000

/**
 * Shares commits among appends where a commit takes a while: what is asked for while one is on its way goes together in
 * the next. `commit` gives the sequence of each, null where the document had moved on, and throws StoreError alone.
 */
export class GroupCommit {
  readonly #commit: (batch: readonly PendingAppend[]) => Promise<readonly (number | null)[]>
  #waiting: Waiting[] = []
  #running: Promise<void> | null = null

  constructor(commit: (batch: readonly PendingAppend[]) => Promise<readonly (number | null)[]>) {
    this.#commit = commit
  }

  append(pending: PendingAppend): Promise<number> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ ...pending, resolve, reject })
      // From the end of this turn of the event loop, so that what arrived in it goes together.
      this.#running ??= new Promise((done) => setImmediate(() => void this.#run().finally(done)))
    })
  }

  /** Resolves when nothing waits any more. */
  async finish(): Promise<void> {
    while (this.#running !== null) await this.#running
  }

  async #run(): Promise<void> {
    while (this.#waiting.length > 0) await this.#serve(this.#takeBatch())
    this.#running = null
  }

  #takeBatch(): Waiting[] {
    let bytes = 0
    let count = 0
    for (const { update } of this.#waiting) {
      bytes += update.byteLength
      if (count > 0 && (bytes > BATCH_BYTES || count >= BATCH_UPDATES)) break
      count += 1
    }
    return this.#waiting.splice(0, count)
  }

  /** Should a batch fail for one update's own fault, the others get a commit of their own. */
  async #serve(batch: readonly Waiting[]): Promise<void> {
    try {
      const sequences = await this.#commit(batch)
      batch.forEach((append, index) => settle(append, sequences[index] ?? null))
    } catch (thrown) {
      const error = thrown as StoreError
      if (batch.length > 1 && error.trouble === 'other') for (const append of batch) await this.#serve([append])
      else batch.forEach((append) => append.reject(error))
    }
  }
}

function settle({ resolve, reject }: Waiting, sequence: number | null): void {
  if (sequence === null) reject(new StoreError('conflict', 'the document has moved on'))
  else resolve(sequence)
}
