import { describe, expect, it } from 'vitest'
import { correlatedTemperature } from '../../shared-core/colour/colourTemperature.ts'
import { ucs1960Of, xyzOfLight } from '../../shared-core/colour/xyz.ts'
import type { Xyz } from '../../shared-core/colour/triples.ts'
import { flashSpectrum } from '../../shared-core/spectra/flash.ts'
import { illuminants } from '../../shared-core/spectra/illuminants.ts'
import { miredOf, shiftMired } from '../../shared-core/spectra/mired.ts'
import { planckianSpectrum } from '../../shared-core/spectra/planck.ts'
import { chromaticityOf } from './chromaticity.ts'

const xyzFromXy = (x: number, y: number): Xyz => [x / y, 1, (1 - x - y) / y]
const xyzFromUv = (u: number, v: number): Xyz => {
  const divisor = 2 * u - 8 * v + 4
  return xyzFromXy((3 * u) / divisor, (2 * v) / divisor)
}

describe('the Planckian locus', () => {
  // Source: Planck's law with c₂ = 1.4388e-2 m K over the CIE 1931 observer, 360-830 nm at 1 nm, summed apart from this
  // program; agrees with Ohno's published table at 5000 K (u 0.211424, v 0.323116). 5 nm sums over 380-780 nm may differ by
  // 6e-5, and the printed figures are rounded to 1e-5.
  const published = [
    [2000, 0.52668, 0.4133, 0.30505, 0.35907],
    [2856, 0.44754, 0.40743, 0.25595, 0.34952],
    [3200, 0.42336, 0.39895, 0.24399, 0.34488],
    [4000, 0.38044, 0.37675, 0.22511, 0.33439],
    [5000, 0.3451, 0.35161, 0.21142, 0.32312],
    [5600, 0.3302, 0.33908, 0.2061, 0.31746],
    [6500, 0.31353, 0.32363, 0.20045, 0.31036],
    [10000, 0.28063, 0.28829, 0.19032, 0.29326],
  ] as const
  for (const [kelvin, x, y, u, v] of published) {
    it(`passes the table at ${kelvin} K`, () => {
      const xyz = xyzOfLight(planckianSpectrum(kelvin))
      const xy = chromaticityOf(xyz)
      const uv = ucs1960Of(xyz)
      expect(Math.abs(xy.x - x)).toBeLessThan(6.5e-5)
      expect(Math.abs(xy.y - y)).toBeLessThan(6.5e-5)
      expect(Math.abs(uv.u - u)).toBeLessThan(6.5e-5)
      expect(Math.abs(uv.v - v)).toBeLessThan(6.5e-5)
    })
  }
})

describe('correlated colour temperature', () => {
  it('agrees with Ohno 2013 on his example', () => {
    // Source: Y. Ohno, "Practical Use and Calculation of CCT and Duv", Leukos 10 (2013): 6507.47 K, Duv +0.003223.
    // Our locus is summed at 5 nm, which moves it by up to 6e-5 in u, v: about 2 K and 2e-5 here.
    const { kelvin, duv, validity } = correlatedTemperature(xyzFromUv(0.1978, 0.3122))
    expect(Math.abs(kelvin - 6507.47)).toBeLessThan(2)
    expect(Math.abs(duv - 0.003223)).toBeLessThan(2e-5)
    expect(validity).toBe('sound')
  })

  it('finds the temperatures of the illuminants', () => {
    // Source: minimisation over a 1 nm locus, apart from this program.
    const published = {
      A: [2855.5, 0],
      D50: [5001.9, 0.0032],
      D55: [5502.4, 0.0033],
      D65: [6503, 0.0032],
      E: [5455.5, -0.0044],
    } as const
    for (const [name, [kelvin, duv]] of Object.entries(published)) {
      const found = correlatedTemperature(xyzOfLight(illuminants[name as keyof typeof published]))
      expect(Math.abs(found.kelvin - kelvin)).toBeLessThan(2)
      expect(Math.abs(found.duv - duv)).toBeLessThan(1e-4)
    }
  })

  it('stays near McCamy where his formula is good', () => {
    // Source: C. S. McCamy, Color Research and Application 17 (1992): -449 n³ + 3525 n² - 6823.3 n + 5520.33.
    // On the locus his own error is up to 19 K in this range.
    for (const kelvin of [3000, 4000, 5000, 6500, 8000]) {
      const xyz = xyzOfLight(planckianSpectrum(kelvin))
      const { x, y } = chromaticityOf(xyz)
      const n = (x - 0.332) / (y - 0.1858)
      const mcCamy = -449 * n ** 3 + 3525 * n ** 2 - 6823.3 * n + 5520.33
      expect(Math.abs(correlatedTemperature(xyz).kelvin - mcCamy)).toBeLessThan(22)
    }
  })

  it('returns the temperature a black body was made with', () => {
    for (const kelvin of [1200, 1800, 2000, 3200, 5600, 12_000, 40_000]) {
      const found = correlatedTemperature(xyzOfLight(planckianSpectrum(kelvin)))
      expect(Math.abs(miredOf(found.kelvin) - miredOf(kelvin))).toBeLessThan(0.01)
      expect(found.validity).toBe('sound')
    }
  })

  it('says when a colour has no temperature', () => {
    // CIE 15: not to be stated where the distance in u, v is above 0.05.
    expect(correlatedTemperature(xyzFromXy(0.3, 0.6)).validity).toBe('far-from-locus')
    expect(correlatedTemperature(xyzFromXy(0.68, 0.31)).validity).not.toBe('sound')
    expect(correlatedTemperature(xyzFromXy(0.22, 0.22)).validity).toBe('beyond-search')
  })
})

describe('reciprocal megakelvin', () => {
  // Source: M = 10⁶/T; worked shifts of the usual conversions.
  it('gives the shifts of the usual conversions', () => {
    const published = [
      [5500, 3200, 130.68], [3200, 5500, -130.68], [5600, 3200, 133.93], [6500, 3200, 158.65], [3200, 4100, -68.6],
      [5500, 3800, 81.34], [3200, 3600, -34.72], [5500, 4500, 40.4], [3200, 3400, -18.38],
      [5500, 4900, 22.26], [5500, 6500, -27.97],
    ] as const
    for (const [from, to, shift] of published) expect(Math.abs(shiftMired(from, to) - shift)).toBeLessThan(0.01)
  })
})

describe('the flash', () => {
  it('has the colour temperature it is asked for', () => {
    for (const kelvin of [2800, 3200, 4000, 4500, 5200, 5600, 6000, 7500]) {
      const found = correlatedTemperature(xyzOfLight(flashSpectrum(kelvin)))
      expect(Math.abs(found.kelvin / kelvin - 1)).toBeLessThan(0.005)
    }
  })

  it('carries one unit of light', () => {
    for (const kelvin of [3000, 4600, 5500]) expect(xyzOfLight(flashSpectrum(kelvin))[1]).toBeCloseTo(1, 12)
  })
})
