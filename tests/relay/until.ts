import { vi } from 'vitest'

/** Waits until it holds. The patience only bounds a test that fails: nothing is asserted about how long it took. */
export function until(holds: () => boolean): Promise<void> {
  return vi.waitFor(() => {
    if (!holds()) throw new Error(`never came true: ${holds.toString()}`)
  }, { timeout: 15_000, interval: 10 })
}
