import { describe, expect, it } from 'vitest'
import { correlatedTemperature } from '../../shared-core/colour/colourTemperature.ts'
import { lightThrough, xyzOfLight } from '../../shared-core/colour/xyz.ts'
import { correctionTransmittance } from '../../shared-core/spectra/gel/correction.ts'
import { CLEAR_SHEET } from '../../shared-core/spectra/gel/families.ts'
import { gelTransmittance, stack } from '../../shared-core/spectra/gel/gel.ts'
import { illuminants } from '../../shared-core/spectra/illuminants.ts'
import { luminousShare } from '../../shared-core/spectra/photopic.ts'
import { planckianSpectrum } from '../../shared-core/spectra/planck.ts'
import type { TransmittanceSpectrum } from '../../shared-core/spectra/spectrum.ts'
import { checkGels, type CheckGel } from '../derivations/checkGels.ts'

const lossStops = (light: Float64Array, sheet: Float64Array): number => -Math.log2(luminousShare(light, sheet))

/**
 * The filter that turns one black body exactly into another: the ratio of their spectra, its highest value over
 * 380-780 nm made 1. The least lossy of all exact ones.
 */
function planckianRatio(fromKelvin: number, toKelvin: number): Float64Array {
  const from = planckianSpectrum(fromKelvin)
  const ratio = planckianSpectrum(toKelvin).map((value, i) => value / from[i]!)
  const highest = Math.max(...ratio)
  return ratio.map((value) => value / highest)
}

describe('what a meter loses behind a gel', () => {
  // Source: ȳ-weighted transmission of the curves under D55, worked apart with numpy.
  it('single sheets', () => {
    const published = { orange: 1.474, red: 3.154, amber: 0.495, teal: 1.306, blue: 3.858, green: 1.429, magenta: 2.394 }
    for (const [name, loss] of Object.entries(published)) {
      expect(Math.abs(lossStops(illuminants.D55, checkGels[name as CheckGel]) - loss)).toBeLessThan(0.001)
    }
  })

  it('two sheets: shares multiply (Beer and Lambert), so the loss does not double', () => {
    const doubled = { orange: 2.031, teal: 2.307, blue: 6.009, red: 3.916 }
    for (const [name, loss] of Object.entries(doubled)) {
      const sheet = checkGels[name as CheckGel]
      expect(Math.abs(lossStops(illuminants.D55, stack(sheet, sheet)) - loss)).toBeLessThan(0.001)
    }
    expect(Math.abs(lossStops(illuminants.D55, stack(checkGels.orange, checkGels.teal)) - 3.63)).toBeLessThan(0.001)
  })

  it('neutral density: D = −log₁₀ T, a stop is 0.30103', () => {
    const published = [[0.15, 0.4983], [0.3, 0.9966], [0.6, 1.9932], [0.9, 2.9897], [1.8, 5.9795], [3, 9.9658]] as const
    for (const [density, stops] of published) {
      const sheet = gelTransmittance({ from: 'neutral', lossStops: stops })
      expect(Math.abs(-Math.log10(sheet[40]!) - density)).toBeLessThan(2e-5)
      expect(Math.abs(lossStops(illuminants.D55, sheet) - stops)).toBeLessThan(1e-9)
    }
  })

  it('a clear sheet loses at its surfaces what Fresnel says', () => {
    // (1 − r)/(1 + r), r = ((n − 1)/(n + 1))², n = 1.49: 0.9254, 0.112 stop.
    const r = (0.49 / 2.49) ** 2
    expect(Math.abs(CLEAR_SHEET - (1 - r) / (1 + r))).toBeLessThan(1e-4)
  })
})

describe('density of a family sheet', () => {
  it('is the dye twice, the surfaces once', () => {
    const once = gelTransmittance({ from: 'family', family: 'teal', density: 1 })
    const twice = gelTransmittance({ from: 'family', family: 'teal', density: 2 })
    once.forEach((share, i) => expect(twice[i]).toBeCloseTo((share * share) / CLEAR_SHEET, 12))
  })
})

describe('conversion sheets', () => {
  it('the exact ratio of two black bodies loses what it must', () => {
    // Source: ȳ-weighted Planck ratio scaled to a peak of 1 over 380-780 nm, worked apart with numpy.
    const published = [[5500, 3200, 1.321], [5500, 3800, 0.825], [5500, 4500, 0.41], [3200, 5500, 2.295]] as const
    for (const [from, to, stops] of published) {
      expect(Math.abs(lossStops(planckianSpectrum(from), planckianRatio(from, to)) - stops)).toBeLessThan(0.002)
    }
  })

  // Source: losses of real sheets, Strobist, lighting Q&A, 12 Sep 2008 (full, half, quarter orange; full, half blue).
  const sheets = [
    { name: 'full orange', shift: 131, kelvin: 5500, becomes: 3200, loss: 1.1 },
    { name: 'half orange', shift: 81, kelvin: 5500, becomes: 3800, loss: 0.5 },
    { name: 'quarter orange', shift: 40.4, kelvin: 5500, becomes: 4500, loss: 0.25 },
    { name: 'full blue', shift: -131, kelvin: 3200, becomes: 5500, loss: 1.5 },
    { name: 'half blue', shift: -68.6, kelvin: 3200, becomes: 4100, loss: 1 },
  ]
  for (const { name, shift, kelvin, becomes, loss } of sheets) {
    it(`${name} lands within 6 mired of its target and loses about what real ones do`, () => {
      const sheet = correctionTransmittance(shift)
      const light = planckianSpectrum(kelvin)
      const { kelvin: found, duv } = correlatedTemperature(xyzOfLight(lightThrough(light, sheet)))
      expect(Math.abs(1e6 / found - 1e6 / becomes)).toBeLessThan(6)
      expect(Math.abs(duv)).toBeLessThan(0.003)
      expect(Math.abs(lossStops(light, sheet) - loss)).toBeLessThan(0.2)
    })
  }

  it('add: two sheets are the sheet of both shifts', () => {
    const two = stack(correctionTransmittance(60), correctionTransmittance(70))
    const one = correctionTransmittance(130)
    one.forEach((share, i) => expect(two[i]).toBeCloseTo(share * CLEAR_SHEET, 12))
  })
})

describe('stacks', () => {
  it('no sheet lets everything through and order does not count', () => {
    expect(Array.from(stack()).every((share) => share === 1)).toBe(true)
    const [a, b] = [checkGels.teal, checkGels.red] as [TransmittanceSpectrum, TransmittanceSpectrum]
    stack(a, b).forEach((share, i) => expect(share).toBe(stack(b, a)[i]))
  })
})
