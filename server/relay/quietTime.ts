/** So long must nobody have said anything. */
const QUIET_MS = 1_000

/** Finds the first pause after something was done: for what holds a room up or can wait, and need not be done each time. */
export class QuietTime {
  readonly #begin: () => void
  #pause: NodeJS.Timeout | undefined

  constructor(begin: () => void) {
    this.#begin = begin
  }

  /** Something was done just now. */
  disturb(): void {
    if (this.#pause !== undefined) this.#pause.refresh()
    else this.#pause = setTimeout(() => {
      this.#pause = undefined
      this.#begin()
    }, QUIET_MS).unref()
  }

  stop(): void {
    clearTimeout(this.#pause)
  }
}
