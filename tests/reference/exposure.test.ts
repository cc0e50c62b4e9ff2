import { describe, expect, it } from 'vitest'
import { ambientStops } from '../../shared-core/exposure/ambient.ts'
import { apertureValue, exactFNumber, fNumberOfApertureValue, nearestAperture } from '../../shared-core/exposure/aperture.ts'
import {
  exposureValue, exposureValueOfIlluminance, exposureValueOfLuminance, illuminanceLuxOfExposureValue,
  luminanceOfExposureValue, speedValue, timeValue,
} from '../../shared-core/exposure/exposureValue.ts'
import { feetFromMetres, guideNumberAt, guideNumberMetres, intensityOfGuideNumber } from '../../shared-core/exposure/guideNumber.ts'
import {
  impliedReflectance, incidentFNumber, incidentLuxSeconds, pointSourceFallOffStops, spotFNumber, stopsAddedBy, stopsOverAperture,
} from '../../shared-core/exposure/meter.ts'
import {
  clipLuxSeconds, focalPlaneLuxSeconds, spotGreyStopsBelowClip, spotStopsOverGrey, stopsBelowClip,
} from '../../shared-core/exposure/saturation.ts'
import { shareCaught, t01OfT05, t05OfT01, tailLossStops } from '../../shared-core/exposure/shutter.ts'

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

  // log2(1 + 2^-d), from the sum of two exposures.
  it.each([[0, 1], [0.5, 0.7716], [1, 0.585], [1.5, 0.4368], [2, 0.3219], [3, 0.1699], [4, 0.0875], [5, 0.0444], [6, 0.0224]])(
    'a second light %d stops under adds %d', (under, added) => expect(stopsAddedBy(under)).toBeCloseTo(added, 4))

  // J. Conrad, Exposure Metering: 15.7 % and 17.6 % in print.
  it.each([[12.5, 250, 15.71], [12.5, 330, 11.9], [12.5, 340, 11.55], [14, 250, 17.59], [14, 330, 13.33]])(
    'K %d over C %d is a reflectance of %d %%', (k, c, percent) => expect(100 * impliedReflectance(k, c)).toBeCloseTo(percent, 2))

  // Point source, inverse square.
  it.each([[1.1, 0.275], [1.2, 0.5261], [1.25, 0.6439], [1.4, 0.9709], [1.5, 1.1699], [2, 2], [3, 3.1699], [8, 6], [10, 6.6439]])(
    'light at %d times the distance loses %d stops', (times, stops) => expect(pointSourceFallOffStops(1, times)).toBeCloseTo(stops, 4))
})

describe('exposure values (S. Ray, Applied Photographic Optics, as in the published EV tables)', () => {
  it.each([
    [-4, 0.0078125, 0.15625], [0, 0.125, 2.5], [3, 1, 20], [5, 4, 80], [8, 32, 640], [10, 128, 2560], [12, 512, 10240],
    [13, 1024, 20480], [14, 2048, 40960], [15, 4096, 81920],
  ])('EV %d is %d cd/m2 and %d lx', (ev, luminance, illuminance) => {
    expect(luminanceOfExposureValue(ev, 12.5) / luminance).toBeCloseTo(1, 9)
    expect(illuminanceLuxOfExposureValue(ev, 250) / illuminance).toBeCloseTo(1, 9)
    expect(exposureValueOfLuminance(luminance, 12.5)).toBeCloseTo(ev, 9)
    expect(exposureValueOfIlluminance(illuminance, 250)).toBeCloseTo(ev, 9)
  })

  // log2(N^2 / t).
  it.each([[16, 1 / 125, 14.9658], [8, 1 / 200, 13.6439], [11, 1 / 200, 14.5627], [2.8, 1 / 60, 8.8777], [16, 1 / 100, 14.6439]])(
    'f/%d at %d s is EV %d', (n, t, ev) => expect(exposureValue(n, t)).toBeCloseTo(ev, 4))

  it('adds up as APEX has it: Av + Tv = Ev, and Sv 5 is ISO 100 (ANSI PH2.5-1960)', () => {
    expect(apertureValue(8) + timeValue(1 / 200)).toBeCloseTo(exposureValue(8, 1 / 200), 12)
    expect([50, 100, 200, 400].map(speedValue)).toEqual([4, 5, 6, 7])
  })

  it('sunny 16: 64 000 lx, inside the 32 000-100 000 lx that direct sun is published as', () => {
    const ev = exposureValue(16, 1 / 100)
    expect(illuminanceLuxOfExposureValue(ev, 250)).toBeCloseTo(64_000, 6)
    expect(illuminanceLuxOfExposureValue(ev, 330)).toBeCloseTo(84_480, 6)
    expect(luminanceOfExposureValue(ev, 12.5)).toBeCloseTo(3_200, 8)
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
      const found = nearestAperture(exact, step)
      expect(found.nominal).toBe(nominal)
      expect(found.exact).toBeCloseTo(exact, 4)
    }
  })

  it('knows what a spoken f-number stands for', () => {
    expect(exactFNumber(11)).toBeCloseTo(11.3137, 4)
    expect(exactFNumber(5.6)).toBeCloseTo(5.65685, 4)
    expect(exactFNumber(7.7)).toBe(7.7)
  })
})

describe('guide numbers (ISO 1230:1992)', () => {
  it.each([[20, 1000], [30, 2250], [40, 4000], [58, 8410], [60, 9000], [80, 16_000]])(
    'GN %d m is %d cd s at C 250', (guide, intensity) => {
      expect(intensityOfGuideNumber(guide, 250)).toBeCloseTo(intensity, 8)
      expect(guideNumberMetres(intensity, 100, 250)).toBeCloseTo(guide, 10)
    })

  it('goes with the root of speed and of energy', () => {
    expect([200, 400, 800, 50].map((iso) => guideNumberAt(1, iso))).toEqual(
      [1.4142, 2, 2.8284, 0.7071].map((factor) => expect.closeTo(factor, 4)))
    expect(guideNumberAt(40, 100, 1 / 4)).toBeCloseTo(20, 10)
    expect(feetFromMetres(40)).toBeCloseTo(131.2, 1)
    expect(feetFromMetres(80)).toBeCloseTo(262.5, 1)
  })

  // A bare tube, isotropic: GN = sqrt(eta Q / (4 pi) x 100 / 250); efficacies as a flash maker publishes their range.
  it.each([
    [100, [6.91, 7.98, 9.77, 11.28, 11.97]], [250, [10.93, 12.62, 15.45, 17.84, 18.92]], [500, [15.45, 17.84, 21.85, 25.23, 26.76]],
    [1000, [21.85, 25.23, 30.9, 35.68, 37.85]],
  ])('bare tube of %d Ws', (joules, guides) => {
    ;[15, 20, 30, 40, 45].forEach((efficacy, i) =>
      expect(guideNumberMetres((efficacy * joules) / (4 * Math.PI), 100, 250)).toBeCloseTo(guides[i]!, 2))
  })
})

describe('flash duration (ISO 2827:1988; exponential decay)', () => {
  it.each([
    [1 / 200, 664, 0.9, 0.8415, 0.9749], [1 / 300, 997, 0.9684, 0.9369, 0.996], [1 / 500, 1661, 0.9968, 0.99, 0.9999],
  ])('t0.1 of %d s', (t01, t05Inverse, in200, in250, in125) => {
    expect(1 / t05OfT01(t01)).toBeCloseTo(t05Inverse, 0)
    expect(shareCaught(t01, 1 / 200)).toBeCloseTo(in200, 4)
    expect(shareCaught(t01, 1 / 250)).toBeCloseTo(in250, 4)
    expect(shareCaught(t01, 1 / 125)).toBeCloseTo(in125, 4)
  })

  it('t0.1 is 3.32 times t0.5; half the light falls inside t0.5, nine tenths inside t0.1', () => {
    expect(t01OfT05(1)).toBeCloseTo(3.321928, 6)
    expect(shareCaught(1, t05OfT01(1))).toBeCloseTo(0.5, 10)
    expect(tailLossStops(1 / 200, 1 / 200)).toBeCloseTo(-0.152, 3)
    expect(tailLossStops(1 / 300, 1 / 250)).toBeCloseTo(-0.094, 3)
  })
})

describe('sensor saturation (ISO 12232: S = 78 / H; H = 0.65 L t / N^2)', () => {
  it('reproduces the worked example of the ANSI meter standard: f/16, 3200 cd/m2, 1/125 s is 0.065 lx s', () => {
    expect(focalPlaneLuxSeconds(3200 / 125, 16)).toBeCloseTo(0.065, 4)
  })

  it.each([
    ['18 % card, C 250', 0.18, 250, 3.067], ['18 % card, C 330', 0.18, 330, 2.666], ['18 % card, C 340', 0.18, 340, 2.623],
    ['90 % white, C 250', 0.9, 250, 0.745], ['90 % white, C 330', 0.9, 330, 0.344], ['90 % white, C 340', 0.9, 340, 0.301],
    ['100 % white, C 250', 1, 250, 0.593], ['100 % white, C 330', 1, 330, 0.192], ['100 % white, C 340', 1, 340, 0.149],
  ])('%s', (_, reflectance, constant, stops) => {
    expect(stopsBelowClip(reflectance, constant)).toBeCloseTo(stops, 2)
    const atAperture = incidentLuxSeconds(8, 200, constant) * reflectance
    expect(Math.log2(clipLuxSeconds(8, 200) / atAperture)).toBeCloseTo(stops, 2)
  })

  it('a spot meter\'s grey stands 3.263 stops under clip with K 12.5, 3.0995 with K 14', () => {
    expect(spotGreyStopsBelowClip(12.5)).toBeCloseTo(3.263, 3)
    expect(spotGreyStopsBelowClip(14)).toBeCloseTo(3.0995, 3)
    const atClip = clipLuxSeconds(8, 200) / Math.PI
    expect(spotStopsOverGrey(atClip, 8, 200, 12.5)).toBeCloseTo(3.263, 3)
    expect(spotFNumber(12.5 * 64 / 200, 200)).toBeCloseTo(8, 10)
  })

  it('a body with headroom clips that much later', () => {
    expect(Math.log2(clipLuxSeconds(8, 200, 0.7) / clipLuxSeconds(8, 200))).toBeCloseTo(0.7, 12)
  })
})

describe('ambient', () => {
  // A room's lux at 1/160 s, f/8, ISO 200 by N^2 = E t S / C, C 330. Worked by hand.
  it.each([[300, -5.8], [400, -5.4], [500, -5.1]])('%d lux is %d stops over', (lux, stops) =>
    expect(ambientStops(lux, 1 / 160, 8, 200, 330)).toBeCloseTo(stops, 1))

  it('is nothing in the dark', () => expect(stopsOverAperture(0, 8, 200, 330)).toBe(-Infinity))
})
