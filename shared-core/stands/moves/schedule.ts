/** Work that takes one person or both, without a break. */
export interface Task {
  readonly minutes: number
  readonly people: 1 | 2
}

/** Task numbers; `after` begins no sooner than lagMinutes past the end of `before`. */
export interface Precedence {
  readonly before: number
  readonly after: number
  readonly lagMinutes: number
}

export interface Schedule {
  readonly starts: readonly number[]
  readonly minutes: number
  /** True when no other order is shorter: proven by search, or met by a bound that none can pass. */
  readonly isShortest: boolean
}

/** Search past this many steps is given up; the best found stands. Small sets are done long before. */
const MOST_STEPS = 60_000
const EPSILON = 1e-9

/**
 * When each task begins, for two people and the least time in all; null when the order asked for runs in a circle.
 * First a list schedule by longest way to the end (R. L. Graham, "Bounds on multiprocessing timing anomalies", 1969, for
 * the method), then branch and bound over all orders of beginnings. An order of beginnings with every task as early as
 * those before it allow reaches a shortest schedule: moving a task earlier never hinders another.
 */
export function scheduleForTwo(tasks: readonly Task[], precedences: readonly Precedence[]): Schedule | null {
  const count = tasks.length
  const after: Precedence[][] = tasks.map(() => [])
  const before: Precedence[][] = tasks.map(() => [])
  for (const one of precedences) {
    after[one.before]!.push(one)
    before[one.after]!.push(one)
  }
  const tails = tailsOf(tasks, after)
  if (tails === null) return null
  const starts = new Array<number>(count).fill(-1)
  let best: { readonly starts: readonly number[]; readonly minutes: number } | null = null
  let steps = 0
  const totalWork = tasks.reduce((total, { minutes, people }) => total + minutes * people, 0)
  const leastPossible = Math.max(totalWork / 2, ...tails, 0)

  function readyAt(task: number): number | null {
    let ready = 0
    for (const { before: other, lagMinutes } of before[task]!) {
      if (starts[other]! < 0) return null
      ready = Math.max(ready, starts[other]! + tasks[other]!.minutes + lagMinutes)
    }
    return ready
  }

  /** `freeA` is not after `freeB`; nothing begins before `last`. The first way down is the list schedule. */
  function place(freeA: number, freeB: number, last: number, left: number, work: number, end: number): void {
    if (left === 0) {
      if (best === null || end < best.minutes - EPSILON) best = { starts: [...starts], minutes: end }
      return
    }
    if (best !== null && (++steps > MOST_STEPS || best.minutes <= leastPossible + EPSILON)) return
    if (best !== null && (Math.max(freeA, last) + Math.max(freeB, last) + work) / 2 >= best.minutes - EPSILON) return
    const open: { readonly task: number; readonly start: number }[] = []
    let soonestEnd = Infinity
    for (let task = 0; task < count; task++) {
      if (starts[task]! >= 0) continue
      const ready = readyAt(task)
      if (ready === null) continue
      const start = Math.max(ready, last, tasks[task]!.people === 2 ? freeB : freeA)
      if (best !== null && start + tails![task]! >= best.minutes - EPSILON) return
      open.push({ task, start })
      soonestEnd = Math.min(soonestEnd, start + tasks[task]!.minutes)
    }
    open.sort((a, b) => a.start - b.start || tails![b.task]! - tails![a.task]! || a.task - b.task)
    for (const { task, start } of open) {
      // Whoever idled until then could have done another task meanwhile.
      if (start >= soonestEnd - EPSILON && start > open[0]!.start) break
      const { minutes, people } = tasks[task]!
      const done = start + minutes
      starts[task] = start
      const [one, other] = people === 2 ? [done, done] : freeB <= start ? [freeA, done] : [done, freeB]
      place(Math.min(one, other), Math.max(one, other), start, left - 1, work - minutes * people, Math.max(end, done))
      starts[task] = -1
    }
  }

  place(0, 0, 0, count, totalWork, 0)
  const found = best as { readonly starts: readonly number[]; readonly minutes: number } | null
  return found === null ? null : { ...found, isShortest: steps <= MOST_STEPS || found.minutes <= leastPossible + EPSILON }
}

/** Each task's own minutes and the longest way from its end to the end of all; null where the order runs in a circle. */
function tailsOf(tasks: readonly Task[], after: readonly (readonly Precedence[])[]): readonly number[] | null {
  const tails = new Array<number | 'open'>(tasks.length)
  function tailOf(task: number): number | null {
    const known = tails[task]
    if (known === 'open') return null
    if (known !== undefined) return known
    tails[task] = 'open'
    let longest = 0
    for (const { after: next, lagMinutes } of after[task]!) {
      const tail = tailOf(next)
      if (tail === null) return null
      longest = Math.max(longest, lagMinutes + tail)
    }
    return (tails[task] = tasks[task]!.minutes + longest)
  }
  const all = tasks.map((_, task) => tailOf(task))
  return all.includes(null) ? null : (all as number[])
}
