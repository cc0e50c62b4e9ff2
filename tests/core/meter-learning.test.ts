import { describe, expect, it } from 'vitest'
import { learn } from '../../shared-core/meter/learn.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { studioOf, type Studio } from './meterStudios.ts'
import { readAlone, stopsBetween, taught, type Readings } from './meterTaking.ts'

const STUDIOS = 200
const LETTERS = ['A', 'B', 'C', 'D'] as const

function readAll(studio: Studio): Readings {
  const truth = studio.trueLevels(studio.plan)
  const readings = readAlone(studio.plan, LETTERS, (letter) => studio.shown(truth.get(letter)!))
  // What the book would not believe somebody has looked at, and it is so.
  return Object.fromEntries(learn(studio.plan, readings).readings.map(({ key, reading, state }) =>
    [key, state === 'held-back' ? { ...reading, accepted: reading.by } : reading]))
}

describe('two hundred studios with kit that differs from its papers', () => {
  it('are known to a fifth of a stop after one reading a light', () => {
    const off: number[] = []
    for (let start = 1; start <= STUDIOS; start++) {
      const studio = studioOf(start, 'a modifier that was read')
      const truth = studio.trueLevels(studio.plan)
      const readings = readAll(studio)
      off.push(...[...studio.levels(taught(studio.plan, readings))].map(([letter, level]) => Math.abs(stopsBetween(level, truth.get(letter)!))))
    }
    expect(Math.max(...off)).toBeLessThan(0.2)
  })

  it.each([['a modifier that was read', 0.9], ['a new modifier', 0.6]] as const)('bring the next light on the same head, with %s, nearer in %d of them', (carries, share) => {
    let nearer = 0
    const before: number[] = []
    const after: number[] = []
    for (let start = 1; start <= STUDIOS; start++) {
      const studio = studioOf(1_000 + start, carries)
      const truth = studio.trueLevels(studio.next)
      const offBy = (plan: Plan) => Math.abs(stopsBetween(studio.levels(plan).get('E')!, truth.get('E')!))
      const was = offBy(studio.next)
      const is = offBy(taught(studio.next, readAll(studio)))
      before.push(was)
      after.push(is)
      // What was within a tenth, all that a meter shows, and still is, has not got worse.
      if (is < was || is <= 0.1) nearer++
    }
    const mean = (of: number[]) => of.reduce((a, b) => a + b) / of.length
    expect(nearer / STUDIOS).toBeGreaterThanOrEqual(share)
    expect(mean(after)).toBeLessThan(mean(before))
  })
})
