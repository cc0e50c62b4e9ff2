/** How many seconds' worth of messages may come at once: a return from offline, a page that was asleep. */
const BURST_SECONDS = 4

/** A bucket that fills with time and loses one a message: an even pace passes, so does a burst, a flood does not. */
export class MessageRate {
  readonly #perSecond: number
  #left: number
  #lastMs: number

  constructor(perSecond: number, nowMs: number) {
    this.#perSecond = perSecond
    this.#left = perSecond * BURST_SECONDS
    this.#lastMs = nowMs
  }

  /** Counts one message; false when it came too soon after too many. */
  take(nowMs: number): boolean {
    const refilled = this.#left + ((nowMs - this.#lastMs) / 1_000) * this.#perSecond
    this.#left = Math.min(refilled, this.#perSecond * BURST_SECONDS) - 1
    this.#lastMs = nowMs
    return this.#left >= 0
  }
}
