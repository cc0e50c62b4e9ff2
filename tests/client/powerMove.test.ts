import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { movedPower, nudgedPower } from '../../client/ladder/powerMove.ts'
import { powerKey } from '../../client/ladder/powerKeys.ts'

const tenths = { fullEnergyJoules: 1000, lowestEnergyJoules: 2, stepStops: 0.1 }
const thirds = { fullEnergyJoules: 1000, lowestEnergyJoules: 31.25, stepStops: 1 / 3 }

// A stop is a doubling of the energy; a guide number goes with its root (ISO 1230).
describe('power in the hand', () => {
  it('a stop down is half the energy, a stop up twice', () => {
    expect(movedPower(tenths, 250, -1).energyJoules).toBeCloseTo(125, 6)
    expect(movedPower(tenths, 250, 1).energyJoules).toBeCloseTo(500, 6)
  })

  it('stops at full power, and says how much more was asked', () => {
    const move = movedPower(tenths, 500, 1.4)
    expect(move.energyJoules).toBe(1000)
    expect(move.pastRangeStops).toBeCloseTo(0.4, 9)
  })

  it('stops at the lowest, and says how far under it was asked', () => {
    const move = movedPower(thirds, 62.5, -2)
    expect(move.energyJoules).toBe(31.25)
    expect(move.pastRangeStops).toBeCloseTo(-1, 9)
  })

  it('always gives a power the head has a step for, within its range', () => {
    fc.assert(
      fc.property(fc.constantFrom(tenths, thirds), fc.double({ min: 2, max: 1000, noNaN: true }), fc.double({ min: -12, max: 12, noNaN: true }), (head, energy, stops) => {
        const { energyJoules } = movedPower(head, energy, stops)
        expect(energyJoules).toBeGreaterThanOrEqual(head.lowestEnergyJoules)
        expect(energyJoules).toBeLessThanOrEqual(head.fullEnergyJoules)
        const steps = -Math.log2(energyJoules / head.fullEnergyJoules) / head.stepStops
        if (energyJoules > head.lowestEnergyJoules) expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-6)
      }),
    )
  })

  it('a key that asks for a tenth moves a head of thirds by its one step, not by nothing', () => {
    expect(Math.log2(nudgedPower(thirds, 500, 0.1).energyJoules / 500)).toBeCloseTo(1 / 3, 9)
    expect(Math.log2(nudgedPower(thirds, 500, -0.1).energyJoules / 500)).toBeCloseTo(-1 / 3, 9)
  })
})

// Arrows a tenth, with shift a third, with alt a stop: common practice, no source.
describe('keys on a light’s tape', () => {
  const press = (key: string, held: { shiftKey?: boolean; altKey?: boolean } = {}) => powerKey({ key, shiftKey: false, altKey: false, ...held })

  it('turn the power by a tenth, a third or a stop, or all the way', () => {
    expect(press('ArrowUp')).toBe(0.1)
    expect(press('ArrowDown')).toBe(-0.1)
    expect(press('ArrowUp', { shiftKey: true })).toBeCloseTo(1 / 3, 9)
    expect(press('ArrowDown', { altKey: true })).toBe(-1)
    expect(press('Home')).toBe('full')
    expect(press('End')).toBe('lowest')
  })

  it('leave all other keys alone', () => {
    for (const key of ['Tab', 'a', ' ', 'Enter', 'Escape']) expect(press(key)).toBeNull()
  })
})
