/** How many seconds' worth of messages may come at once: a return from offline, a page that was asleep. */
const BURST_SECONDS = 4
/** How many seconds' worth of bytes: what was done in a long time offline comes as one message. */
const BYTES_BURST_SECONDS = 10

/** A bucket that fills with time and is emptied by use: an even pace passes, so does a burst, a flood does not. */
export class MessageRate {
  readonly #perSecond: number
  readonly #most: number
  #left: number
  #lastMs: number

  constructor(perSecond: number, nowMs: number, burstSeconds = BURST_SECONDS) {
    this.#perSecond = perSecond
    this.#most = perSecond * burstSeconds
    this.#left = this.#most
    this.#lastMs = nowMs
  }

  /** Counts one message, or so many bytes; false when they came too soon after too many. */
  take(nowMs: number, amount = 1): boolean {
    this.#left = this.#refilled(nowMs) - amount
    this.#lastMs = nowMs
    return this.#left >= 0
  }

  /** Whether it is as full as when it was made, so that a new one would do as well. */
  isFull(nowMs: number): boolean {
    return this.#refilled(nowMs) >= this.#most
  }

  #refilled(nowMs: number): number {
    return Math.min(this.#left + ((nowMs - this.#lastMs) / 1_000) * this.#perSecond, this.#most)
  }
}

/** How many bytes each seat may say, over all its connections: to come back does not give anybody more. */
export class SeatRates {
  readonly #bytesPerSecond: number
  readonly #rates = new Map<string, MessageRate>()

  constructor(bytesPerSecond: number) {
    this.#bytesPerSecond = bytesPerSecond
  }

  of(seatId: string): MessageRate {
    const rate = this.#rates.get(seatId) ?? new MessageRate(this.#bytesPerSecond, performance.now(), BYTES_BURST_SECONDS)
    this.#rates.set(seatId, rate)
    return rate
  }

  /** Forgets seats that used nothing of late. One still connected keeps its own, full as it is. */
  forgetRested(nowMs: number): void {
    for (const [seatId, rate] of this.#rates) if (rate.isFull(nowMs)) this.#rates.delete(seatId)
  }
}
