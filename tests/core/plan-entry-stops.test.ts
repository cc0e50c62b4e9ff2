import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { amountOf } from '../../shared-core/plan/entry/amount.ts'
import { formatFNumber, parseFNumber } from '../../shared-core/plan/entry/aperture.ts'
import { formatPower, parsePower } from '../../shared-core/plan/entry/power.ts'
import { formatStops, parseStops, stopsInWords } from '../../shared-core/plan/entry/stops.ts'
import { powerNotations, type Head } from '../../shared-core/plan/schema/kit.ts'

const value = (read: { readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string }) =>
  read.ok ? read.value : read.message

/** Evenly spread: the generator of doubles gives mostly numbers next to nothing. */
const between = (least: number, most: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((part) => least + ((most - least) * part) / 1_000_000)

describe('stops', () => {
  it.each([
    ['-2', -2], ['+1/3', 1 / 3], ['1⅓', 4 / 3], ['1 1/3', 4 / 3], ['-1 1/3', -4 / 3], ['−1⅓', -4 / 3], ['minus two', -2], ['-0.5', -0.5], ['-0,5', -0.5],
    ['half a stop under', -0.5], ['one over', 1], ['two thirds', 2 / 3], ['a third', 1 / 3], ['one and a third', 4 / 3], ['0', 0], ['2 stops down', -2],
    ['1.7 stops', 1.7], ['−1.7', -1.7], ['plus three tenths', 0.3],
  ])('%s', (typed, expected) => {
    expect(value(parseStops(typed))).toBeCloseTo(expected, 12)
  })

  it.each(['', 'stop', '1.5 2', '1/0', 'under', '--2', 'a', '-2 under', '30', '1 2 3'])('%s is refused', (typed) => {
    expect(value(parseStops(typed))).toEqual(expect.any(String))
  })

  it('come back as they were written', () => {
    fc.assert(fc.property(between(-20, 20), (stops) => {
      const read = value(parseStops(formatStops(stops)))
      expect(Math.abs(Number(read) - stops)).toBeLessThanOrEqual(0.05 + 1e-9)
      expect(formatStops(Number(read))).toBe(formatStops(stops))
    }))
  })

  it('are one or several in words', () => {
    expect([0.3, 1, 1.04, 1.1, -2].map(stopsInWords)).toEqual(['0.3 stop', '1.0 stop', '1.0 stop', '1.1 stops', '2.0 stops'])
  })
})

describe('apertures', () => {
  // A full stop is a factor of the square root of two in f-number, and f/5.6, f/11, f/22 are names for 5.657, 11.31,
  // 22.63 (ISO 517). A small figure beside the f-number is tenths of a stop: usual on flash meters.
  const stop = (stopsFromF1: number) => 2 ** (stopsFromF1 / 2)

  it.each([
    ['8', stop(6)], ['f/8', stop(6)], ['f8', stop(6)], ['F 8', stop(6)], ['eight', stop(6)], ['f/11', stop(7)], ['11', stop(7)], ['5.6', stop(5)], ['5,6', stop(5)],
    ['8.3', stop(6.3)], ['f/8.3', stop(6.3)], ['f/8 and 3 tenths', stop(6.3)], ['8 and 3 tenths', stop(6.3)], ['eight and three tenths', stop(6.3)], ['8+0.3', stop(6.3)],
    ['8 3', stop(6.3)], ['f/8 + 0.3', stop(6.3)], ['8-0.3', stop(5.7)], ['f/8 and a third', stop(6 + 1 / 3)], ['8⅓', stop(6 + 1 / 3)],
    ['5.6½', stop(5.5)], ['5.6 1/2', stop(5.5)], ['five-six and a half', stop(5.5)], ['5.6.5', stop(5.5)], ['5.6 5', stop(5.5)], ['2.8.9', stop(3.9)], ['4.5', stop(4.5)],
    ['11.5', stop(7.5)], ['22.2', stop(9.2)], ['1.4', stop(1)], ['0.7', stop(-1)], ['128', stop(14)], ['two-eight', stop(3)],
  ])('%s', (typed, expected) => {
    expect(value(parseFNumber(typed))).toBeCloseTo(expected, 9)
  })

  // What cameras engrave between full stops, in thirds (from memory).
  it.each([['6.3', 5 + 1 / 3], ['7.1', 5 + 2 / 3], ['9', 6 + 1 / 3], ['10', 6 + 2 / 3], ['13', 7 + 1 / 3], ['14', 7 + 2 / 3], ['3.2', 3 + 1 / 3], ['1.8', 1 + 2 / 3]])(
    '%s is a camera’s engraving', (typed, stops) => expect(value(parseFNumber(typed))).toBeCloseTo(stop(stops), 9),
  )

  it.each(['', 'f', 'f/', '8.33', '8..3', '0.5', '200', 'wide open', '8 and', '8 + 2', '-8', 'f/f'])('%s is refused', (typed) => {
    expect(value(parseFNumber(typed))).toEqual(expect.any(String))
  })

  it('that are full stops come out exactly', () => {
    for (const [typed, exact] of [['1', 1], ['2', 2], ['4', 4], ['8', 8], ['16', 16], ['32', 32]] as const) {
      expect(value(parseFNumber(typed))).toBe(exact)
    }
  })

  it('come back as they were written, within a twentieth of a stop', () => {
    fc.assert(fc.property(between(-1, 14).map((stops) => 2 ** (stops / 2)), (fNumber) => {
      const written = formatFNumber(fNumber)
      const read = Number(value(parseFNumber(written)))
      expect(Math.abs(2 * Math.log2(read / fNumber))).toBeLessThanOrEqual(0.05 + 1e-9)
      expect(formatFNumber(read)).toBe(written)
    }))
  })
})

describe('power', () => {
  const panel = (powerNotation: Head['powerNotation'], stepStops = 0.1) => ({ fullEnergyJoules: 1_000, stepStops, powerNotation })

  // A stop is a factor of two in energy; a quarter of 1000 J is 250 J, and three tenths of a stop more is times 2^0.3.
  it.each([
    ['1/4', 250], ['¼', 250], ['quarter', 250], ['quarter power', 250], ['1/4+0.3', 250 * 2 ** 0.3], ['1/4 + 3/10', 250 * 2 ** 0.3],
    ['quarter plus three tenths', 250 * 2 ** 0.3], ['1/8 - 1/3', 125 * 2 ** (-1 / 3)], ['-2', 250], ['minus two', 250], ['−4.1', 1_000 * 2 ** -4.1],
    ['full', 1_000], ['1/1', 1_000], ['half', 500], ['full minus two', 250], ['250 Ws', 250], ['250ws', 250], ['250 J', 250], ['250 joules', 250], ['250 watt seconds', 250],
    ['1/32', 31.25], ['1/256', 1_000 / 256], ['250', 250], ['6.5 Ws', 6.5],
  ])('%s means the same on every head', (typed, joules) => {
    for (const notation of powerNotations) expect(value(parsePower(typed, panel(notation)))).toBeCloseTo(joules, 9)
  })

  it('6.5 is 3.5 stops from full on a scale of ten, joules where joules are shown, and asked about elsewhere', () => {
    expect(value(parsePower('6.5', panel('scale-of-ten')))).toBeCloseTo(1_000 * 2 ** -3.5, 9)
    expect(value(parsePower('10', panel('scale-of-ten')))).toBe(1_000)
    expect(value(parsePower('6.5', panel('joules')))).toBe(6.5)
    expect(value(parsePower('6.5', panel('stops-from-full')))).toContain('stops or joules')
    expect(value(parsePower('6.5', panel('fraction')))).toContain('stops or joules')
  })

  it('0 is full where stops from full are shown', () => {
    expect(value(parsePower('0', panel('stops-from-full')))).toBe(1_000)
    expect(value(parsePower('0', panel('joules')))).toContain('more than nothing')
  })

  it.each(['', 'much', '+1', '1/4 1/4', '2/1', '1/0', '30000 Ws', '-30', '0 Ws', '1/4+0.3+0.1'])('%s is refused', (typed) => {
    for (const notation of powerNotations) expect(value(parsePower(typed, panel(notation)))).toEqual(expect.any(String))
  })

  it('is written as the head’s panel writes it', () => {
    const joules = 1_000 * 2 ** -1.7
    expect(powerNotations.map((notation) => formatPower(joules, panel(notation)))).toEqual(['1/4+0.3', '−1.7', '8.3', '308 Ws'])
    expect(formatPower(250 * 2 ** (1 / 3), panel('fraction', 1 / 3))).toBe('1/4+1/3')
    expect(formatPower(1_000, panel('stops-from-full'))).toBe('full')
    expect(formatPower(1_000, panel('fraction'))).toBe('1/1')
  })

  it('comes back as it was written, for every setting of a nine-stop head', () => {
    for (const notation of powerNotations) {
      for (let tenths = 0; tenths <= 90; tenths += 1) {
        const written = formatPower(1_000 * 2 ** (-tenths / 10), panel(notation))
        const read = Number(value(parsePower(written, panel(notation))))
        expect(Math.round(10 * Math.log2(1_000 / read))).toBe(tenths)
        expect(formatPower(read, panel(notation))).toBe(written)
      }
    }
  })
})

it('no text at all makes a reader throw or answer with something that is no number', () => {
  const readers = [parseStops, parseFNumber, (typed: string) => parsePower(typed, { fullEnergyJoules: 500, stepStops: 0.1, powerNotation: 'fraction' })]
  const fragments = fc.constantFrom('1', '2.8', '/', '+', '-', ' ', 'f', '½', 'and', 'half', 'ws', '.', ',', '0', "'", 'minus', 'quarter')
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.array(fragments).map((parts) => parts.join(''))), (typed) => {
    for (const reader of readers) {
      const read = reader(typed)
      if (read.ok) expect(Number.isFinite(read.value)).toBe(true)
      else expect(read.message.length).toBeGreaterThan(10)
    }
    expect(amountOf(typed)).not.toBeNaN()
  }), { numRuns: 500 })
})
