/** Time as this needs it; the page's own, or a test's. */
export interface Clock {
  nowMs(): number
  after(delayMs: number, run: () => void): void
}

export const pageClock: Clock = {
  nowMs: () => performance.now(),
  after: (delayMs, run) => void setTimeout(run, delayMs),
}

/**
 * Passes values on at most once an interval, always the latest and never a stale one after a newer; the last value is
 * always passed on. For presence: thirty pointer places a second are enough, and old ones are worth nothing.
 */
export function latestOnly<Value>(send: (value: Value) => void, intervalMs: number, clock: Clock = pageClock): (value: Value) => void {
  let lastSentMs = Number.NEGATIVE_INFINITY
  let waiting: { readonly value: Value } | null = null

  function flush(): void {
    if (waiting === null) return
    const { value } = waiting
    waiting = null
    lastSentMs = clock.nowMs()
    send(value)
  }

  return (value) => {
    const alreadyWaiting = waiting !== null
    waiting = { value }
    if (alreadyWaiting) return
    const dueInMs = lastSentMs + intervalMs - clock.nowMs()
    if (dueInMs <= 0) flush()
    else clock.after(dueInMs, flush)
  }
}
