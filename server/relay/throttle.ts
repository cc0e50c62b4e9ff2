/**
 * Runs a task when asked: at the end of the present turn of the event loop when it has not run lately, otherwise once
 * its window since the last run is over. Asking again meanwhile changes nothing; it never runs beside itself.
 */
export class Throttle {
  readonly #windowMs: () => number
  readonly #task: () => Promise<void>
  #lastStartMs = -Infinity
  #timer: NodeJS.Timeout | undefined
  #immediate: NodeJS.Immediate | undefined
  #running: Promise<void> | null = null
  #askedWhileRunning: 'no' | 'ask' | 'now' = 'no'
  #isStopped = false

  /** The window is asked for anew each time. The task must not reject. */
  constructor(windowMs: () => number, task: () => Promise<void>) {
    this.#windowMs = windowMs
    this.#task = task
  }

  ask(): void {
    if (this.#running !== null && this.#askedWhileRunning === 'no') this.#askedWhileRunning = 'ask'
    if (this.#isStopped || this.#running !== null || this.#isAwaited) return
    const waitMs = this.#lastStartMs + this.#windowMs() - performance.now()
    if (waitMs <= 0) this.#immediate = setImmediate(() => this.#run())
    else this.#timer = setTimeout(() => this.#run(), waitMs)
  }

  /** Like `ask`, without waiting for the window. */
  askNow(): void {
    if (this.#running !== null) this.#askedWhileRunning = 'now'
    if (this.#isStopped || this.#running !== null || this.#immediate !== undefined) return
    clearTimeout(this.#timer)
    this.#timer = undefined
    this.#immediate = setImmediate(() => this.#run())
  }

  /**
   * Takes over a run that is awaited and at least so long after the last: whoever calls does the task's work now. False
   * when there is nothing to take over.
   */
  takeOver(leastSinceLastMs: number): boolean {
    const nowMs = performance.now()
    if (this.#isStopped || this.#running !== null || !this.#isAwaited || nowMs - this.#lastStartMs < leastSinceLastMs) return false
    this.#clear()
    this.#lastStartMs = nowMs
    return true
  }

  /** Runs what was asked for and resolves when nothing is left to do. */
  async finish(): Promise<void> {
    while (!this.#isStopped && (this.#running !== null || this.#isAwaited)) {
      if (this.#running === null) this.#run()
      await this.#running
    }
  }

  /** No run starts any more. */
  stop(): void {
    this.#isStopped = true
    this.#clear()
  }

  get #isAwaited(): boolean {
    return this.#timer !== undefined || this.#immediate !== undefined
  }

  #run(): void {
    this.#clear()
    this.#lastStartMs = performance.now()
    this.#running = this.#task().then(() => {
      this.#running = null
      const asked = this.#askedWhileRunning
      this.#askedWhileRunning = 'no'
      if (asked === 'now') this.askNow()
      if (asked === 'ask') this.ask()
    })
  }

  #clear(): void {
    clearTimeout(this.#timer)
    clearImmediate(this.#immediate)
    this.#timer = undefined
    this.#immediate = undefined
  }
}
