import { describe, expect, it } from 'vitest'
import { adaptationMatrix } from '../../shared-core/colour/adaptation.ts'
import {
  channelsOf,
  channelsThrough,
  whiteBalanceGains,
} from '../../shared-core/colour/camera.ts'
import { cameraMatrix, xyzFromChannels } from '../../shared-core/colour/cameraMatrix.ts'
import { colourDifference2000 } from '../../shared-core/colour/difference.ts'
import { applyMatrix } from '../../shared-core/colour/matrix.ts'
import { lightThrough, xyzOfLight } from '../../shared-core/colour/xyz.ts'
import { flashSpectrum } from '../../shared-core/spectra/flash.ts'
import { spectrumOf } from '../../shared-core/spectra/spectrum.ts'
import { SRGB_WHITE_XYZ } from '../../shared-core/spectra/srgb.ts'
import { measuredSkins } from './measuredSkins.ts'
import { clipLuxSeconds } from '../../shared-core/exposure/saturation.ts'

/**
 * ΔE00 between the surface as the camera renders it and as the eye sees it, both adapted from the flash to D65 and
 * exposed alike: a sensor's green is not the eye's luminance, so under warm light it reads a few per cent off.
 */
function renderingError(surface: Float64Array, kelvin: number): number {
  const flash = flashSpectrum(kelvin)
  const gains = whiteBalanceGains(kelvin)
  const level = channelsOf(flash, gains)[1]
  const channels = channelsThrough(flash, surface, gains).map((value) => value / level) as [number, number, number]
  const rendered = xyzFromChannels(channels, kelvin)
  const toD65 = adaptationMatrix(SRGB_WHITE_XYZ, xyzOfLight(flash), 'cat16')
  return colourDifference2000(rendered, applyMatrix(toD65, xyzOfLight(lightThrough(flash, surface))))
}

describe('the generic camera on surfaces it was never fitted to', () => {
  // Source of the skins: NIST, DOI 10.18434/M38597. ΔE00 below 2 on skin is what a well profiled camera reaches
  // (common practice, no source).
  for (const [name, skin] of Object.entries(measuredSkins)) {
    it(`renders ${name} within ΔE00 1.5 at flash temperatures`, () => {
      for (const kelvin of [5_200, 5_500, 6_000]) expect(renderingError(skin, kelvin)).toBeLessThan(1.5)
    })
    it(`renders ${name} within ΔE00 2 under tungsten balance`, () => {
      expect(renderingError(skin, 3_200)).toBeLessThan(2)
    })
  }

  it('renders neutral papers neutral at every balance', () => {
    for (const kelvin of [2_800, 3_800, 5_500, 7_500]) {
      for (const reflectance of [0.04, 0.2, 0.9]) {
        const paper = spectrumOf<Float64Array>(() => reflectance)
        const [red, green, blue] = channelsThrough(flashSpectrum(kelvin), paper, whiteBalanceGains(kelvin))
        expect(red / green).toBeCloseTo(1, 12)
        expect(blue / green).toBeCloseTo(1, 12)
        expect(renderingError(paper, kelvin)).toBeLessThan(0.01)
      }
    }
  })

  it('renders white paper that drops a little towards blue, as unbleached stock does, within ΔE00 1.5', () => {
    const paper = spectrumOf<Float64Array>((nm) => 0.86 - 0.2 / (1 + Math.exp((nm - 450) / 25)))
    expect(renderingError(paper, 5_500)).toBeLessThan(1.5)
  })
})

describe('the colour matrix', () => {
  it('keeps white, and never makes a clipped colour darker than black or brighter than white', () => {
    for (const kelvin of [2_000, 3_200, 5_500, 6_500, 12_000]) {
      const white = xyzFromChannels([1, 1, 1], kelvin)
      white.forEach((value, k) => expect(value).toBeCloseTo(SRGB_WHITE_XYZ[k]!, 12))
      const [, luminance] = cameraMatrix(kelvin)
      luminance.forEach((share) => expect(share).toBeGreaterThan(0))
    }
  })
})

describe('anchor of exposure', () => {
  it('a perfect white clips at 78π/q times N²/S lux-seconds', () => {
    // Source: ISO 12232, H_sat = 78/S, with H = q L t/N², q = 0.65.
    expect(Math.abs(clipLuxSeconds(1, 100) - (78 * Math.PI) / 65)).toBeLessThan(1e-9)
    expect(Math.abs(clipLuxSeconds(1, 1) - 377)).toBeLessThan(0.05)
  })

  it('places a metered 18 % card where the standards say', () => {
    // Source: C = 250, 330 and 340 (ISO 2720) against ISO 12232: 3.067, 2.666 and 2.623 stops below clip. tol 0.005.
    const published = [[250, 3.067], [330, 2.666], [340, 2.623]] as const
    for (const [constant, stopsBelow] of published) {
      const luxSeconds = (constant * 8 * 8) / 200
      const reading = (0.18 * luxSeconds) / clipLuxSeconds(8, 200)
      expect(Math.abs(-Math.log2(reading) - stopsBelow)).toBeLessThan(0.005)
    }
  })

  it('headroom clips later', () => {
    expect(clipLuxSeconds(8, 100, 1) / clipLuxSeconds(8, 100)).toBeCloseTo(2, 12)
  })

  it('clear D55 flash of one lux-second reads 1, 1, 1, and twice the light reads twice', () => {
    const gains = whiteBalanceGains(5_500)
    channelsOf(flashSpectrum(5_500), gains).forEach((value) => expect(value).toBeCloseTo(1, 12))
    const doubled = channelsOf(flashSpectrum(5_500).map((value) => 2 * value), gains)
    doubled.forEach((value) => expect(value).toBeCloseTo(2, 12))
  })
})
