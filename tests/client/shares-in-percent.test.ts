import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sharesInPercent } from '../../client/frame/reading/sharesInPercent.ts'

describe('shares in whole percents', () => {
  it('keep the quota rule and add up to 100 (Hamilton\'s method; Balinski and Young, Fair Representation, 1982)', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 10_000 }), { minLength: 1, maxLength: 12 }), (parts) => {
      const whole = parts.reduce((sum, part) => sum + part, 0)
      fc.pre(whole > 0)
      const percents = sharesInPercent(parts.map((part) => part / whole))
      expect(percents.reduce((sum, percent) => sum + percent, 0)).toBe(100)
      percents.forEach((percent, i) => {
        expect(Number.isInteger(percent)).toBe(true)
        expect(Math.abs(percent - (100 * parts[i]!) / whole)).toBeLessThan(1)
      })
      // Of two shares the greater never gets less.
      parts.forEach((part, i) => parts.forEach((other, k) => {
        if (part > other) expect(percents[i]).toBeGreaterThanOrEqual(percents[k]!)
      }))
    }))
  })

  // By hand: whole parts first, what is left over to the largest remainders, the first of equals before the others.
  it.each([
    ['thirds', [1 / 3, 1 / 3, 1 / 3], [34, 33, 33]],
    ['a rest of 0.6 before one of 0.3', [0.503, 0.306, 0.191], [50, 31, 19]],
    ['what a machine writes as 28.999...', [0.29, 0.57, 0.14], [29, 57, 14]],
    ['one light alone', [1], [100]],
    ['no light', [], []],
  ])('%s', (_, shares, percents) => expect(sharesInPercent(shares)).toEqual(percents))
})
