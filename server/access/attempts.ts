/** More addresses than this at once are a flood from everywhere; the oldest are then forgotten. */
const MAX_ADDRESSES = 10_000

/** Counts what each address did within a window of time, to say when it was too often. */
export class Attempts {
  readonly #limit: number
  readonly #windowMs: number
  readonly #counts = new Map<string, { count: number; untilMs: number }>()

  constructor(limit: number, windowMs: number) {
    this.#limit = limit
    this.#windowMs = windowMs
  }

  /** Whether the address has used up its window. */
  isExhausted(address: string, nowMs: number): boolean {
    const entry = this.#counts.get(address)
    return entry !== undefined && nowMs < entry.untilMs && entry.count >= this.#limit
  }

  count(address: string, nowMs: number): void {
    const entry = this.#counts.get(address)
    if (entry !== undefined && nowMs < entry.untilMs) {
      entry.count += 1
      return
    }
    this.#counts.delete(address)
    this.#counts.set(address, { count: 1, untilMs: nowMs + this.#windowMs })
    const [oldest] = this.#counts.keys()
    if (this.#counts.size > MAX_ADDRESSES && oldest !== undefined) this.#counts.delete(oldest)
  }
}
