import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  formatAngle, formatIso, formatKelvin, formatShutter, parseAngle, parseIso, parseKelvin, parseShutter,
} from '../../shared-core/plan/entry/camera.ts'

const value = (read: { readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string }) =>
  read.ok ? read.value : read.message

describe('shutter times', () => {
  it.each([['1/160', 1 / 160], ['160', 1 / 160], ['1/160 s', 1 / 160], ['1/160sec', 1 / 160], ['0.5', 0.5], ['½', 0.5], ['0.5s', 0.5], ['2s', 2], ['2"', 2], ['2 seconds', 2], ['1', 1], ['1/1.6', 1 / 1.6]])(
    '%s', (typed, seconds) => expect(value(parseShutter(typed))).toBeCloseTo(seconds, 12),
  )
  it.each(['', '1.6', '0', '-2', '1/0', '40000', '90 s', 'bulb'])('%s is refused', (typed) => {
    expect(value(parseShutter(typed))).toEqual(expect.any(String))
  })
  it('come back as they were written', () => {
    // Thirds of a stop from a minute to a thirty-two thousandth, as cameras have them.
    for (let thirds = -17; thirds <= 44; thirds += 1) {
      const written = formatShutter(2 ** (-thirds / 3))
      expect(formatShutter(Number(value(parseShutter(written))))).toBe(written)
    }
  })
})

describe('film speeds, colour temperatures and angles', () => {
  it.each([['200', 200], ['ISO 200', 200], ['iso100', 100], ['12,800', 12_800], ['12 800', 12_800]])('%s', (typed, speed) => {
    expect(value(parseIso(typed))).toBe(speed)
  })
  it.each([['5500', 5_500], ['5500K', 5_500], ['5500 k', 5_500], ['5 500 K', 5_500], ['5,500', 5_500], ['5500 kelvin', 5_500]])('%s', (typed, kelvin) => {
    expect(value(parseKelvin(typed))).toBe(kelvin)
  })
  it.each([['30', 30], ['30°', 30], ['-15 deg', -15], ['15 left', -15], ['15° right', 15], ['10 up', 10], ['10 down', -10], ['−22.5°', -22.5], ['0', 0]])('%s', (typed, degrees) => {
    expect(value(parseAngle(typed))).toBe(degrees)
  })
  it.each([['', 'x', '3', '1e6'], ['', 'warm', '900', '55'], ['', 'x', '400', '-15 left']].flatMap((typed, index) =>
    typed.map((text) => [text, [parseIso, parseKelvin, parseAngle][index]!] as const)))('%s is refused', (typed, reader) => {
    expect(value(reader(typed))).toEqual(expect.any(String))
  })
  it('come back as they were written', () => {
    fc.assert(fc.property(fc.integer({ min: 6, max: 819_200 }), fc.integer({ min: 1_500, max: 20_000 }), fc.integer({ min: -36_000, max: 36_000 }), (iso, kelvin, hundredths) => {
      const degrees = hundredths / 100
      expect(value(parseIso(formatIso(iso)))).toBe(iso)
      expect(value(parseKelvin(formatKelvin(kelvin)))).toBe(kelvin)
      expect(Math.abs(Number(value(parseAngle(formatAngle(degrees)))) - degrees)).toBeLessThanOrEqual(0.05 + 1e-9)
    }))
  })
})
