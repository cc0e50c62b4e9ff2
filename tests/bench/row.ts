/** One measured figure. Targets are goals, not limits: the bench reports, it never fails. */
export interface BenchRow {
  readonly name: string
  readonly value: number
  readonly unit: string
  readonly target: number | null
  readonly better: 'lower' | 'higher'
  readonly note: string
}

/** Median time of one call in milliseconds, warm: repeated for long enough that the clock's grain does not matter. */
export function medianMs(call: () => void, options: { warmUps?: number; rounds?: number; callsARound?: number } = {}): number {
  const { warmUps = 200, rounds = 31, callsARound = 20 } = options
  for (let i = 0; i < warmUps; i++) call()
  const times: number[] = []
  for (let round = 0; round < rounds; round++) {
    const startedMs = performance.now()
    for (let i = 0; i < callsARound; i++) call()
    times.push((performance.now() - startedMs) / callsARound)
  }
  times.sort((a, b) => a - b)
  return times[Math.floor(times.length / 2)] ?? NaN
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
}
