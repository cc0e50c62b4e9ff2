import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastCostPairs } from '../../shared-core/stands/moves/assignment.ts'
import { scheduleForTwo, type Precedence, type Task } from '../../shared-core/stands/moves/schedule.ts'

/** The least cost over every way to pair, by trying them all. */
function leastByTrying(away: readonly number[], coming: readonly number[], pair: (i: number, j: number) => number, i = 0, taken = new Set<number>()): number {
  if (i === away.length) return coming.reduce((sum, cost, j) => sum + (taken.has(j) ? 0 : cost), 0)
  let least = away[i]! + leastByTrying(away, coming, pair, i + 1, taken)
  for (let j = 0; j < coming.length; j++) {
    if (!taken.has(j)) least = Math.min(least, pair(i, j) + leastByTrying(away, coming, pair, i + 1, new Set([...taken, j])))
  }
  return least
}

describe('which becomes which', () => {
  const costs = (length: number) => fc.array(fc.integer({ min: 0, max: 20 }), { minLength: length, maxLength: length })
  it('costs as little as the cheapest of all ways tried', () => {
    const sizes = fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 }))
    const table = sizes.chain(([n, m]) => fc.tuple(costs(n), costs(m), fc.array(fc.option(fc.integer({ min: 0, max: 30 }), { nil: Infinity }), { minLength: n * m, maxLength: n * m })))
    fc.assert(fc.property(table, ([away, coming, flat]) => {
      const pair = (i: number, j: number): number => flat[i * coming.length + j]!
      const pairs = leastCostPairs(away, coming, pair)
      const used = pairs.filter((j) => j !== null)
      expect(new Set(used).size).toBe(used.length)
      const cost = pairs.reduce<number>((sum, j, i) => sum + (j === null ? away[i]! : pair(i, j)), 0) + coming.reduce((sum, one, j) => sum + (used.includes(j) ? 0 : one), 0)
      expect(cost).toBe(leastByTrying(away, coming, pair))
    }))
  })
})

/** The least time for two by every order of tasks and every choice of person, each begun as soon as that allows. */
function shortestByTrying(tasks: readonly Task[], precedences: readonly Precedence[]): number {
  let least = Infinity
  const ends = new Map<number, number>()
  function next(free: readonly [number, number], end: number): void {
    if (ends.size === tasks.length) { least = Math.min(least, end); return }
    for (const [i, { minutes, people }] of tasks.entries()) {
      if (ends.has(i)) continue
      const waits = precedences.filter(({ after }) => after === i)
      if (waits.some(({ before }) => !ends.has(before))) continue
      const ready = Math.max(0, ...waits.map(({ before, lagMinutes }) => ends.get(before)! + lagMinutes))
      for (const who of people === 2 ? ['both' as const] : [0 as const, 1 as const]) {
        const done = minutes + Math.max(ready, who === 'both' ? Math.max(...free) : free[who])
        ends.set(i, done)
        next(who === 'both' ? [done, done] : who === 0 ? [done, free[1]] : [free[0], done], Math.max(end, done))
        ends.delete(i)
      }
    }
  }
  next([0, 0], 0)
  return tasks.length === 0 ? 0 : least
}

describe('work split between two', () => {
  const task = fc.record({ minutes: fc.constantFrom(0.25, 0.5, 1, 2, 3, 5), people: fc.constantFrom<1 | 2>(1, 1, 1, 2) })
  const work = fc.array(task, { maxLength: 6 }).chain((tasks) => fc.tuple(
    fc.constant(tasks),
    tasks.length < 2 ? fc.constant<Precedence[]>([]) : fc.array(fc.record({
      pair: fc.tuple(fc.nat(tasks.length - 1), fc.nat(tasks.length - 1)).filter(([a, b]) => a !== b), lagMinutes: fc.constantFrom(0, 0, 1, 5),
    }), { maxLength: 5 }).map((all) => all.map(({ pair: [a, b], lagMinutes }) => ({ before: Math.min(a, b), after: Math.max(a, b), lagMinutes }))),
  ))

  it('takes no longer than the best of all orders tried, and says that it is the shortest', () => {
    fc.assert(fc.property(work, ([tasks, precedences]) => {
      const { minutes, isShortest } = scheduleForTwo(tasks, precedences)!
      expect(isShortest).toBe(true)
      expect(minutes).toBe(shortestByTrying(tasks, precedences))
    }), { numRuns: 200 })
  }, 60_000)

  // P. Brucker, Scheduling Algorithms: two machines without precedence reach the larger of half the work and the longest task only when the work can be halved: 3+3 against 2+2+2.
  it('halves what can be halved', () => {
    const tasks = [3, 3, 2, 2, 2].map((minutes) => ({ minutes, people: 1 as const }))
    expect(scheduleForTwo(tasks, [])).toMatchObject({ minutes: 6, isShortest: true })
  })

  it('refuses an order that runs in a circle', () => {
    const tasks = [{ minutes: 1, people: 1 as const }, { minutes: 1, people: 1 as const }]
    expect(scheduleForTwo(tasks, [{ before: 0, after: 1, lagMinutes: 0 }, { before: 1, after: 0, lagMinutes: 0 }])).toBeNull()
  })
})
