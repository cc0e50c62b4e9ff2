import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatLength, parseLength, type Units } from '../../shared-core/plan/entry/length.ts'
import { formatSize } from '../../shared-core/plan/entry/size.ts'

// One inch is 25.4 mm and one foot 304.8 mm exactly: international yard and pound agreement, 1959.
const FOOT = 0.3048
const INCH = 0.0254

/** Evenly spread: the generator of doubles gives mostly numbers next to nothing. */
const between = (least: number, most: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((part) => least + ((most - least) * part) / 1_000_000)

function metres(typed: string, units: Units = 'metric'): number | string {
  const read = parseLength(typed, units)
  return read.ok ? read.value : read.message
}

describe('lengths', () => {
  it.each([
    ['1.14', 1.14], ['1,14', 1.14], ['1.14 m', 1.14], ['1.14m', 1.14], ['.5', 0.5], ['2', 2], ['2 metres', 2], ['1m', 1],
    ['1m40', 1.4], ['1m04', 1.04], ['1 m 40', 1.4], ['1 m 40 cm', 1.4], ['1m 4cm', 1.04],
    ['140 cm', 1.4], ['140cm', 1.4], ['140', 1.4], ['1140 mm', 1.14], ['½ m', 0.5], ['1½ m', 1.5],
    ['-0.75', -0.75], ['−2.10 m', -2.1], ['minus 2', -2], ['+0.5', 0.5], ['-0', 0], ['0', 0],
    ['5 ft', 5 * FOOT], ["5'", 5 * FOOT], ['5 feet', 5 * FOOT], ['5ft', 5 * FOOT], ['5.5 ft', 5.5 * FOOT],
    ["4'7", 4 * FOOT + 7 * INCH], ['4\'7"', 4 * FOOT + 7 * INCH], ['4’7”', 4 * FOOT + 7 * INCH], ["4'7''", 4 * FOOT + 7 * INCH],
    ['5ft 3in', 5 * FOOT + 3 * INCH], ['5 feet 3 inches', 5 * FOOT + 3 * INCH], ['4\' 7½"', 4 * FOOT + 7.5 * INCH],
    ['4\'7 1/2"', 4 * FOOT + 7.5 * INCH], ['63 in', 63 * INCH], ['63"', 63 * INCH], ['½"', INCH / 2], ['five feet', 5 * FOOT],
    ["-4'7", -(4 * FOOT + 7 * INCH)],
  ])('%s', (typed, expected) => {
    expect(metres(typed)).toBeCloseTo(expected, 5)
  })

  it('without a unit are feet for who measures in feet', () => {
    expect(metres('5', 'imperial')).toBeCloseTo(5 * FOOT, 5)
    expect(metres('5½', 'imperial')).toBeCloseTo(5.5 * FOOT, 5)
    expect(metres('1.14 m', 'imperial')).toBe(1.14)
  })

  it.each([
    ['1m4', 'metric', 'Write a length'], ['63', 'imperial', 'feet or inches'], ["5'13", 'metric', 'Write a length'],
    ['', 'metric', 'Write a length'], ['abc', 'metric', 'Write a length'], ['1.14.2', 'metric', 'Write a length'], ['1-2', 'metric', 'Write a length'],
    ['2 1', 'metric', 'Write a length'], ['90x120', 'metric', 'Write a length'], ['51 m', 'metric', 'longer than 50 m'],
    ['1e3', 'metric', 'Write a length'], ['9'.repeat(500), 'metric', 'Write a length'], ['NaN', 'metric', 'Write a length'], ['infinity', 'metric', 'Write a length'],
  ] as const)('%s in %s is refused', (typed, units, words) => {
    expect(metres(typed, units)).toContain(words)
  })

  it('are written to the centimetre, or to the half inch', () => {
    expect(formatLength(1.136, 'metric')).toBe('1.14 m')
    expect(formatLength(-2.1, 'metric')).toBe('−2.10 m')
    expect(formatLength(-0.001, 'metric')).toBe('0.00 m')
    expect(formatLength(4 * FOOT + 7.4 * INCH, 'imperial')).toBe('4\'7½"')
    expect(formatLength(5 * FOOT - 0.1 * INCH, 'imperial')).toBe("5'")
    expect(formatLength(7 * INCH, 'imperial')).toBe('7"')
    expect(formatLength(INCH / 2, 'imperial')).toBe('½"')
    expect(formatLength(0, 'imperial')).toBe('0"')
    expect(formatLength(-5 * FOOT, 'imperial')).toBe("−5'")
  })

  it('come back as they were written, within half of the last place', () => {
    fc.assert(fc.property(between(-50, 50), fc.constantFrom<Units>('metric', 'imperial'), (value, units) => {
      const written = formatLength(value, units)
      const read = metres(written, units)
      // The very end of the range may round up past it.
      if (typeof read === 'string') {
        expect(Math.abs(value)).toBeGreaterThan(49.99)
        return
      }
      expect(Math.abs(read - value)).toBeLessThanOrEqual((units === 'metric' ? 0.005 : INCH / 4) + 1e-5)
      expect(formatLength(read, units)).toBe(written)
    }))
  })
})

describe('sizes', () => {
  it('are written to the millimetre in centimetres, or to the half inch', () => {
    expect(formatSize(0.9, 1.2, 'metric')).toBe('90 × 120 cm')
    expect(formatSize(0.35, 1.405, 'metric')).toBe('35 × 140.5 cm')
    expect(formatSize(24 * INCH, 36.6 * INCH, 'imperial')).toBe('24" × 36½"')
  })
})
