import type { Log } from '../log.ts'
import type { Store } from '../store/store.ts'
import { asStoreError, type StoreError } from '../store/storeError.ts'

/**
 * Whether edits are being kept. While they are not, none is accepted anywhere, since what others would see could be
 * lost; the store is tried again until it can.
 */
export class StoreHealth {
  readonly #store: Store
  readonly #probeMs: number
  readonly #log: Log
  readonly #listeners = new Set<() => void>()
  #notKept: string | null = null
  #timer: NodeJS.Timeout | undefined

  constructor(store: Store, probeMs: number, log: Log) {
    this.#store = store
    this.#probeMs = probeMs
    this.#log = log
  }

  /** Why edits are not kept, in words for people; null while they are. */
  get notKept(): string | null {
    return this.#notKept
  }

  /** Calls back whenever `notKept` changes. Returns the way to stop that. */
  onChange(listener: () => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /** An append failed: tells everybody and keeps trying until one would succeed. */
  failed(error: StoreError): void {
    if (this.#notKept === null) this.#log.error('edits are not kept', { trouble: error.trouble, detail: error.message })
    this.#change(error.words)
    if (error.trouble !== 'closed') this.#probeLater()
  }

  stop(): void {
    clearTimeout(this.#timer)
    this.#timer = undefined
    this.#listeners.clear()
  }

  #probeLater(): void {
    this.#timer ??= setTimeout(() => void this.#probe(), this.#probeMs).unref()
  }

  async #probe(): Promise<void> {
    try {
      await this.#store.probe()
    } catch (thrown) {
      this.#timer = undefined
      return this.failed(asStoreError(thrown))
    }
    this.#timer = undefined
    this.#log.info('edits are kept again')
    this.#change(null)
  }

  #change(notKept: string | null): void {
    if (this.#notKept === notKept) return
    this.#notKept = notKept
    for (const listener of this.#listeners) listener()
  }
}
