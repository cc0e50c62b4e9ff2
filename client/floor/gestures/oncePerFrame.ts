/** Calls through with the latest value, at most once before each picture on the screen. */
export interface OncePerFrame<Value> {
  set(value: Value): void
  /** Forgets a value that is still waiting. */
  cancel(): void
}

/** @param ask asks for a call before the next picture and gives back how to take that back */
export function oncePerFrame<Value>(
  call: (value: Value) => void,
  ask: (callback: () => void) => () => void = (callback) => {
    const id = requestAnimationFrame(callback)
    return () => cancelAnimationFrame(id)
  },
): OncePerFrame<Value> {
  let waiting: { readonly value: Value } | null = null
  let takeBack: (() => void) | null = null
  return {
    set(value) {
      waiting = { value }
      takeBack ??= ask(() => {
        takeBack = null
        const now = waiting
        waiting = null
        if (now !== null) call(now.value)
      })
    },
    cancel() {
      waiting = null
      takeBack?.()
      takeBack = null
    },
  }
}
