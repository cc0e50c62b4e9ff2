import { describe, expect, it } from 'vitest'
import { atDistance, tiltDegreesOf } from '../../client/panels/beam.ts'
import { meterInWords } from '../../client/panels/meterWords.ts'
import { angleQuantity, lengthIn, percentQuantity, plainQuantity, powerOf, stopsQuantity, type Quantity } from '../../client/panels/quantities.ts'
import { skinHex } from '../../client/panels/subject/skinHex.ts'
import { sheenWords, skinWords, undertoneWords } from '../../client/panels/subject/skinWords.ts'
import { selectionAbout } from '../../client/snags/selectionAbout.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { MeterReading } from '../../shared-core/predict/prediction.ts'

const typed = (quantity: Quantity, text: string) => {
  const read = quantity.parse(text)
  return read.ok ? read.value : read.message
}

describe('numbers on the sheets', () => {
  it('are written and read in the person’s own units', () => {
    expect(lengthIn('metric').format(1.14)).toBe('1.14 m')
    expect(typed(lengthIn('metric'), '1m40')).toBeCloseTo(1.4, 9)
    // An inch is 25.4 mm exactly: international yard and pound agreement, 1959.
    expect(typed(lengthIn('imperial'), '5 ft')).toBeCloseTo(60 * 0.0254, 9)
    expect(typed(percentQuantity, '1.5 %')).toBeCloseTo(0.015, 9)
    expect(percentQuantity.format(0.4)).toBe('40.0 %')
    expect(typed(plainQuantity('mm', 1), '85mm')).toBe(85)
    expect(typed(plainQuantity('lux', 10), 'bright')).toMatch(/number/)
  })

  it('step by what a hand expects, and leave no dust behind', () => {
    expect(lengthIn('metric').step(1.1, 1, 'plain')).toBe(1.11)
    expect(lengthIn('imperial').step(1, 1, 'plain')).toBeCloseTo(1 + 0.0127, 5)
    expect(stopsQuantity.step(0.2, 1, 'plain')).toBe(0.3)
    expect(angleQuantity.step(0.1, -1, 'shift')).toBe(-4.9)
    const head = Object.values(demoPlan.heads)[0]!
    expect(powerOf(head).step(250, 1, 'alt')).toBeCloseTo(500, 6)
  })

  it('meter readings are said as meters show them', () => {
    const reading = (fullFNumber: number | null, tenths: number) => ({ fullFNumber, tenths }) as unknown as MeterReading
    expect(meterInWords(reading(8, 3))).toBe('f/8 and 3 tenths')
    expect(meterInWords(reading(5.6, 1))).toBe('f/5.6 and 1 tenth')
    expect(meterInWords(reading(11, 0))).toBe('f/11')
    expect(meterInWords(reading(null, 0))).toBe('no light')
  })
})

describe('a beam as a rigger says it', () => {
  const place = (xMetres: number, yMetres: number, zMetres: number) => ({ xMetres, yMetres, zMetres })

  // The 3-4-5 triangle of Euclid.
  it('moves along its own line to a distance, and back', () => {
    expect(atDistance(place(3, 4, 1.5), [0, 0, 1.5], 2.5)).toEqual(place(1.5, 2, 1.5))
    expect(atDistance(place(1.5, 2, 1.5), [0, 0, 1.5], 5)).toEqual(place(3, 4, 1.5))
  })

  it('tilts down as minus', () => {
    expect(tiltDegreesOf(place(0, -1, 2), place(0, 0, 1))).toBeCloseTo(-45, 9)
    expect(tiltDegreesOf(place(0, 0, 1), place(1, 0, 1))).toBeCloseTo(0, 9)
  })
})

// Classes by individual typology angle: Chardon, Cretois, Hourseau 1991 (55, 41, 28, 10, -30 degrees).
describe('skin in words', () => {
  it('changes at the published borders', () => {
    const borders = [[56, 54], [42, 40], [29, 27], [11, 9], [-29, -31]] as const
    for (const [above, below] of borders) expect(skinWords(above)).not.toBe(skinWords(below))
    expect(new Set([65, 50, 35, 20, 0, -40, -70].map(skinWords)).size).toBe(7)
    expect([skinWords(65), skinWords(-70)]).toEqual(['very fair', 'very deep'])
  })

  it('says undertone and sheen from end to end', () => {
    expect([undertoneWords(-1), undertoneWords(0), undertoneWords(1)]).toEqual(['olive', 'neutral', 'rosy'])
    expect([sheenWords(0), sheenWords(1)]).toEqual(['matt', 'dewy'])
  })

  it('paints deeper skin darker, and skin always redder than blue', () => {
    const channels = (hex: string) => [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16)) as [number, number, number]
    const greens = [60, 40, 20, 0, -30, -60].map((ita) => channels(skinHex(ita, 0))[1])
    expect(greens).toEqual([...greens].sort((a, b) => b - a))
    for (const ita of [60, 0, -60]) expect(channels(skinHex(ita, 0))[0]).toBeGreaterThan(channels(skinHex(ita, 0))[2])
  })
})

describe('what a snag picks', () => {
  const look = Object.values(demoPlan.looks)[0]!
  const [lightId] = Object.keys(look.lights) as [string]

  it('is the first thing it names that is in the look', () => {
    expect(selectionAbout(['gone', lightId, 'nose'], look)).toEqual({ kind: 'light', id: lightId })
    expect(selectionAbout(['camera'], look)).toEqual({ kind: 'camera' })
    expect(selectionAbout(['cheek-left'], look)).toEqual({ kind: 'area', id: 'cheek-left' })
    expect(selectionAbout(['constructor', 'gone'], look)).toBeNull()
  })
})
