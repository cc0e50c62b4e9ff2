/** Throws that are the same for the same number: a run that failed can be looked at again. */
export class Dice {
  #state: number

  constructor(run: number) {
    this.#state = (run * 2_654_435_769) >>> 0
  }

  /** Evenly from 0 up to, not including, 1. Mulberry32, a generator in the public domain. */
  fraction(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0
    let mixed = this.#state
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }

  /** A whole number from 0 up to, not including, `limit`. */
  below(limit: number): number {
    return Math.floor(this.fraction() * limit)
  }

  happens(probability: number): boolean {
    return this.fraction() < probability
  }

  oneOf<Item>(items: readonly Item[]): Item {
    return items[this.below(items.length)] as Item
  }
}
