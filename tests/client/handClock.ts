import type { Clock } from '../../client/session/latestOnly.ts'

/** A clock that stands until it is moved, running what falls due on the way. */
export class HandClock implements Clock {
  #nowMs = 0
  #due: { readonly atMs: number; readonly run: () => void }[] = []

  nowMs = () => this.#nowMs
  after = (delayMs: number, run: () => void) => void this.#due.push({ atMs: this.#nowMs + delayMs, run })

  moveOn(byMs: number): void {
    const untilMs = this.#nowMs + byMs
    for (;;) {
      const next = this.#due.filter(({ atMs }) => atMs <= untilMs).sort((a, b) => a.atMs - b.atMs)[0]
      if (next === undefined) break
      this.#due.splice(this.#due.indexOf(next), 1)
      this.#nowMs = next.atMs
      next.run()
    }
    this.#nowMs = untilMs
  }
}
