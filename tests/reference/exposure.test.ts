import { describe, expect, it } from 'vitest'
import { ambientLuxSeconds } from '../../shared-core/exposure/ambient.ts'
import { apertureSeries, exactFNumber, fNumberOfApertureValue } from '../../shared-core/exposure/aperture.ts'
import { incidentFNumber, incidentLuxSeconds, stopsOverAperture } from '../../shared-core/exposure/meter.ts'
import { clipLuxSeconds, spotStopsOverGrey } from '../../shared-core/exposure/saturation.ts'
import { shareCaught, t01OfT05, tailLossStops } from '../../shared-core/exposure/shutter.ts'
import { GREY_OF_CLIP } from '../../shared-core/picture/spotReading.ts'

describe('flash exposure, incident: N^2 = H S / C (ISO 2720:1974, flash as ISO 10157:1991)', () => {
  it.each([
    [250, [40, 80, 160, 320, 640]], [330, [52.8, 105.6, 211.2, 422.4, 844.8]], [340, [54.4, 108.8, 217.6, 435.2, 870.4]],
  ])('C = %d at ISO 100 from f/4 to f/16', (constant, exposures) => {
    exposures.forEach((luxSeconds, i) => {
      const fNumber = fNumberOfApertureValue(4 + i)
      expect(incidentLuxSeconds(fNumber, 100, constant)).toBeCloseTo(luxSeconds, 8)
      expect(incidentFNumber(luxSeconds, 100, constant)).toBeCloseTo(fNumber, 10)
    })
  })

  it('needs half the light at twice the speed', () => {
    const exposures = [50, 100, 200, 400, 800, 1600].map((iso) => incidentLuxSeconds(8, iso, 250))
    expect(exposures).toEqual([320, 160, 80, 40, 20, 10])
  })
})

describe('aperture series', () => {
  // Engraved on cameras and lenses; exact values are powers of the square root of 2.
  it.each([
    ['third', [[1.1, 1.12246], [1.6, 1.5874], [2.2, 2.24492], [3.5, 3.56359], [4.5, 4.48985], [6.3, 6.3496], [7.1, 7.12719],
      [9, 8.9797], [10, 10.07937], [11, 11.31371], [13, 12.69921], [14, 14.25438], [18, 17.95939], [20, 20.15874],
      [22, 22.62742], [25, 25.39842], [29, 28.50876], [32, 32]]],
    ['half', [[1.2, 1.18921], [1.7, 1.68179], [2.4, 2.37841], [3.3, 3.36359], [4.8, 4.75683], [6.7, 6.72717], [9.5, 9.51366],
      [13, 13.45434], [19, 19.02731], [27, 26.90869]]],
    ['full', [[1.4, 1.41421], [2.8, 2.82843], [5.6, 5.65685], [8, 8], [11, 11.31371], [22, 22.62742], [45, 45.2548]]],
  ] as const)('%s stops', (step, pairs) => {
    for (const [nominal, exact] of pairs) {
      expect(apertureSeries(step).find((engraved) => engraved.nominal === nominal)?.exact).toBeCloseTo(exact, 4)
    }
  })

  it('knows what a spoken f-number stands for', () => {
    expect(exactFNumber(11)).toBeCloseTo(11.3137, 4)
    expect(exactFNumber(5.6)).toBeCloseTo(5.65685, 4)
    expect(exactFNumber(7.7)).toBe(7.7)
  })
})

describe('flash duration (ISO 2827:1988; exponential decay)', () => {
  it.each([
    [1 / 200, 664, 0.9, 0.8415, 0.9749], [1 / 300, 997, 0.9684, 0.9369, 0.996], [1 / 500, 1661, 0.9968, 0.99, 0.9999],
  ])('t0.1 of %d s', (t01, t05Inverse, in200, in250, in125) => {
    expect(t01OfT05(1 / t05Inverse)).toBeCloseTo(t01, 5)
    expect(shareCaught(t01, 1 / 200)).toBeCloseTo(in200, 4)
    expect(shareCaught(t01, 1 / 250)).toBeCloseTo(in250, 4)
    expect(shareCaught(t01, 1 / 125)).toBeCloseTo(in125, 4)
  })

  it('t0.1 is 3.32 times t0.5; half the light falls inside t0.5, nine tenths inside t0.1', () => {
    expect(t01OfT05(1)).toBeCloseTo(3.321928, 6)
    expect(shareCaught(t01OfT05(1), 1)).toBeCloseTo(0.5, 10)
    expect(tailLossStops(1 / 200, 1 / 200)).toBeCloseTo(-0.152, 3)
    expect(tailLossStops(1 / 300, 1 / 250)).toBeCloseTo(-0.094, 3)
  })
})

describe('sensor saturation (ISO 12232: S = 78 / H; H = 0.65 L t / N^2)', () => {
  it.each([
    ['18 % card, C 250', 0.18, 250, 3.067], ['18 % card, C 330', 0.18, 330, 2.666], ['18 % card, C 340', 0.18, 340, 2.623],
    ['90 % white, C 250', 0.9, 250, 0.745], ['90 % white, C 330', 0.9, 330, 0.344], ['90 % white, C 340', 0.9, 340, 0.301],
    ['100 % white, C 250', 1, 250, 0.593], ['100 % white, C 330', 1, 330, 0.192], ['100 % white, C 340', 1, 340, 0.149],
  ])('%s', (_, reflectance, constant, stops) => {
    const atAperture = incidentLuxSeconds(8, 200, constant) * reflectance
    expect(Math.log2(clipLuxSeconds(8, 200) / atAperture)).toBeCloseTo(stops, 2)
  })

  it('a spot meter\'s grey stands 3.263 stops under clip with K 12.5, 3.0995 with K 14', () => {
    expect(-Math.log2(GREY_OF_CLIP)).toBeCloseTo(3.263, 3)
    const atClip = clipLuxSeconds(8, 200) / Math.PI
    expect(spotStopsOverGrey(atClip, 8, 200, 12.5)).toBeCloseTo(3.263, 3)
    expect(spotStopsOverGrey(atClip, 8, 200, 14)).toBeCloseTo(3.0995, 3)
  })

  it('a body with headroom clips that much later', () => {
    expect(Math.log2(clipLuxSeconds(8, 200, 0.7) / clipLuxSeconds(8, 200))).toBeCloseTo(0.7, 12)
  })
})

describe('ambient', () => {
  // A room's lux at 1/160 s, f/8, ISO 200 by N^2 = E t S / C, C 330. Worked by hand.
  it.each([[300, -5.8], [400, -5.4], [500, -5.1]])('%d lux is %d stops over', (lux, stops) =>
    expect(stopsOverAperture(ambientLuxSeconds(lux, 1 / 160), 8, 200, 330)).toBeCloseTo(stops, 1))

  it('is nothing in the dark', () => expect(stopsOverAperture(0, 8, 200, 330)).toBe(-Infinity))
})
