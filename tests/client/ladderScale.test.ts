import { describe, expect, it } from 'vitest'
import { fullStopsAround, heightOf, ladderScale, pinnedAt, stopsOfMove } from '../../client/ladder/scale.ts'

describe('the ladder’s scale', () => {
  const scale = ladderScale(1140, 20)

  it('runs from five stops over the aperture to six under, a stop as high as any other', () => {
    expect(heightOf(scale, 5)).toBe(20)
    expect(heightOf(scale, -6)).toBe(1120)
    expect(heightOf(scale, 0) - heightOf(scale, 1)).toBeCloseTo(100, 9)
  })

  it('pins what is past its ends, and says which end; no light at all hangs at the foot', () => {
    expect([heightOf(scale, 9), pinnedAt(9)]).toEqual([20, 'above'])
    expect([heightOf(scale, -9), pinnedAt(-9)]).toEqual([1120, 'below'])
    expect([heightOf(scale, null), pinnedAt(null)]).toEqual([1120, 'below'])
    expect(pinnedAt(-6)).toBeNull()
  })

  it('a hand that goes up adds light', () => {
    expect(stopsOfMove(scale, -150)).toBeCloseTo(1.5, 9)
  })

  // The full f-stops as engraved, ISO 517: 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45.
  it('sets the engraved full stops a stop apart around the taking aperture', () => {
    const around = new Map(fullStopsAround(8).map(({ engraved, stops }) => [engraved, stops]))
    const expected = { '45': 5, '32': 4, '22': 3, '16': 2, '11': 1, '8': 0, '5.6': -1, '4': -2, '2.8': -3, '2': -4, '1.4': -5, '1': -6 }
    expect([...around.keys()].sort()).toEqual(Object.keys(expected).sort())
    for (const [engraved, stops] of Object.entries(expected)) expect(around.get(engraved)).toBeCloseTo(stops, 9)
  })

  // f/9 is engraved for f/8 and a third, ISO 517: so f/8 lies a third of a stop under it.
  it('keeps the full stops where they are when the aperture is between two of them', () => {
    const f8 = fullStopsAround(9).find(({ engraved }) => engraved === '8')
    expect(f8?.stops).toBeCloseTo(-1 / 3, 9)
  })
})
