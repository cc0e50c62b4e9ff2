import { describe, expect, it } from 'vitest'
import { apertureSeries, fullAndTenths } from '../../shared-core/exposure/aperture.ts'
import { powerRoom, rangeStops, recycleAtEnergy, stopsFromFull, t01AtEnergy } from '../../shared-core/exposure/power.ts'
import { syncVerdict } from '../../shared-core/exposure/shutter.ts'

describe('a meter\'s display: full f-number and tenths (common practice, no source)', () => {
  it.each([
    [8, 8, 0], [8 * 2 ** (0.3 / 2), 8, 3], [5.65685, 5.6, 0], [5.65685 * 2 ** 0.25, 5.6, 5], [11.3137 * 2 ** 0.4, 11, 8],
    [7.99, 8, 0], [1, 1, 0], [0.9, 0.7, 7], [90.5, 90, 0],
  ])('f/%d', (fNumber, fullFNumber, tenths) => expect(fullAndTenths(fNumber)).toEqual({ fullFNumber, tenths }))

  it('never shows ten tenths', () => {
    for (let av = -1; av < 12; av += 0.013) expect(fullAndTenths(2 ** (av / 2)).tenths).toBeLessThan(10)
  })

  it('the series rise, engraved and exact', () => {
    for (const step of ['full', 'half', 'third'] as const) {
      const series = apertureSeries(step)
      for (let i = 1; i < series.length; i++) {
        expect(series[i]!.exact).toBeGreaterThan(series[i - 1]!.exact)
        expect(series[i]!.nominal).toBeGreaterThan(series[i - 1]!.nominal)
      }
    }
  })
})

describe('power', () => {
  const head = { fullEnergyJoules: 1000, lowestEnergyJoules: 1000 / 512, stepStops: 0.1 }

  it('counts stops from full and both ends', () => {
    expect(rangeStops(head)).toBeCloseTo(9, 12)
    expect(stopsFromFull(head, 250)).toBeCloseTo(-2, 12)
    expect(powerRoom(head, 250)).toEqual({
      stopsInHand: expect.closeTo(2, 12), stopsAboveLowest: expect.closeTo(7, 12), isInRange: true,
    })
    expect(powerRoom(head, 1000).isInRange).toBe(true)
    expect(powerRoom(head, 1010)).toMatchObject({ stopsInHand: expect.closeTo(-0.0144, 4), isInRange: false })
    expect(powerRoom(head, 1).isInRange).toBe(false)
  })

  it('is quicker and refills sooner the lower it is', () => {
    expect(t01AtEnergy(head, 1 / 200, 1000)).toBe(1 / 200)
    expect(t01AtEnergy(head, 1 / 200, 250)).toBeLessThan(1 / 200)
    expect(recycleAtEnergy(head, 1.2, 500)).toBeCloseTo(0.6, 12)
    expect(recycleAtEnergy(head, 1.2, 2)).toBe(0.05)
  })
})

describe('sync (common practice, no source)', () => {
  it('cuts a band past the limit, and may with a radio right at it', () => {
    expect(syncVerdict(1 / 250, 1 / 200, false).cutsBand).toBe(true)
    expect(syncVerdict(1 / 200, 1 / 200, false)).toMatchObject({ cutsBand: false, radioDoubtful: false })
    expect(syncVerdict(1 / 200, 1 / 200, true)).toMatchObject({ cutsBand: false, radioDoubtful: true })
    expect(syncVerdict(1 / 160, 1 / 200, true)).toMatchObject({ cutsBand: false, radioDoubtful: false })
    expect(syncVerdict(1 / 125, 1 / 160, true).radioDoubtful).toBe(false)
  })
})
