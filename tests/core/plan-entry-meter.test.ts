import { describe, expect, it } from 'vitest'
import { parseMeterReading } from '../../shared-core/plan/entry/meterReading.ts'

// A full stop is a factor of the square root of two in f-number (ISO 517); the small figure beside it is tenths of a stop,
// usual on flash meters. The camera takes at f/8, six stops from f/1.
const stops = (typed: string): number | string => {
  const read = parseMeterReading(typed, 8)
  return read.ok ? 2 * Math.log2(read.value) : read.message
}

describe('a meter\'s reading, as people say it', () => {
  it.each([
    ['8 and 3', 6.3], ['8 3', 6.3], ['8.3', 6.3], ['f8 and 3', 6.3], ['F/8 and three', 6.3], ['eight and three', 6.3], ['eight and three tenths', 6.3],
    ['8 and 3/10', 6.3], ['8 and .3', 6.3], ['8, 3', 6.3], ['5.6½', 5.5], ['five six and a half', 5.5], ['five-six and a half', 5.5], ['five point six and a half', 5.5],
    ['five six five', 5.5], ['5.6 and 5', 5.5], ['f/8 and a third', 6 + 1 / 3], ['eight and two thirds', 6 + 2 / 3], ['2.8 9', 3.9], ['2.8 and 9', 3.9],
    ['two eight nine', 3.9], ['two eight and nine tenths', 3.9], ['2.8 9/10', 3.9], ['4 and 0', 4], ['four and zero', 4], ['4 0', 4], ['4.9', 4.9], ['4 and 9', 4.9],
    ['8', 6], ['f/8', 6], ['eight', 6], ['eleven and two', 7.2], ['sixteen', 8], ['twenty-two and one', 9.1], ['16 point 5', 8.5], ['1.4 and 2', 1.2],
    ['-1.7', 4.3], ['minus one point seven', 4.3], ['1.7 under', 4.3], ['+0.3', 6.3], ['half a stop over', 6.5], ['−2', 4], ['two stops under', 4],
    ['ate and three', 6.3], ['for and a half', 4.5], ['to point eight and nine', 3.9], ['it reads eight and three.', 6.3], ['Eight and 3.', 6.3],
  ])('%s', (typed, expected) => {
    expect(stops(typed)).toBeCloseTo(expected, 9)
  })

  it.each([
    ['', 'Nothing was written'], ['   ', 'Nothing was written'], ['E', 'saw no flash'], ['error', 'saw no flash'], ['bright', 'as the meter shows it'], ['8 and', 'as the meter shows it'],
    ['8 and 12', 'Tenths go from 0 to 9'], ['8 and 3 and 4', 'as the meter shows it'], ['400', 'f/0.7 to f/128'], ['banana and a half', 'as the meter shows it'],
  ])('“%s” is refused, and why is said', (typed, words) => {
    expect(stops(typed)).toContain(words)
  })
})
