import { describe, expect, it } from 'vitest'
import { xyzOfLight } from '../../shared-core/colour/xyz.ts'
import { illuminants } from '../../shared-core/spectra/illuminants.ts'
import { colourMatching } from '../../shared-core/spectra/observer.ts'
import { inPhotopicUnits } from '../../shared-core/spectra/photopic.ts'
import { chromaticityOf } from './chromaticity.ts'

const at = (nm: number): number => (nm - 380) / 5

describe('the observer', () => {
  // Source: CIE 1931 standard observer (CIE 15), sample rows and 5 nm sums over 380-780 nm.
  it('has the published rows', () => {
    const published = { 450: [0.3362, 0.038, 1.77211], 550: [0.4334499, 0.9949501, 0.00875], 600: [1.0622, 0.631, 0.0008] }
    for (const [nm, row] of Object.entries(published)) {
      const found = [colourMatching.x, colourMatching.y, colourMatching.z].map((curve) => curve[at(Number(nm))]!)
      found.forEach((value, k) => expect(Math.abs(value - row[k]!)).toBeLessThan(2e-6))
    }
  })

  it('sums to equal areas', () => {
    const sum = (curve: Float64Array) => curve.reduce((total, value) => total + value, 0)
    expect(sum(colourMatching.x)).toBeCloseTo(21.371525, 5)
    expect(sum(colourMatching.y)).toBeCloseTo(21.371328, 5)
    expect(sum(colourMatching.z)).toBeCloseTo(21.37154, 5)
  })
})

describe('whites of the illuminants', () => {
  // Source: CIE 15:2004, tables of XYZ and xy for the 2-degree observer.
  const cie15 = {
    A: { xyz: [109.85, 100, 35.58], x: 0.44758, y: 0.40745 },
    D50: { xyz: [96.42, 100, 82.51], x: 0.34567, y: 0.35851 },
    D55: { xyz: [95.68, 100, 92.14], x: 0.33243, y: 0.34744 },
    D65: { xyz: [95.04, 100, 108.88], x: 0.31272, y: 0.32903 },
    E: { xyz: [100, 100, 100], x: 1 / 3, y: 1 / 3 },
  } as const
  for (const [name, { xyz, x, y }] of Object.entries(cie15)) {
    it(`${name} is CIE 15's within 0.01`, () => {
      const found = xyzOfLight(inPhotopicUnits(illuminants[name as keyof typeof cie15]))
      found.forEach((value, k) => expect(Math.abs(100 * value - xyz[k]!)).toBeLessThan(0.01))
      const xy = chromaticityOf(found)
      expect(Math.abs(xy.x - x)).toBeLessThan(2e-5)
      expect(Math.abs(xy.y - y)).toBeLessThan(2e-5)
    })
  }
})

describe('curves of the illuminants', () => {
  it('A follows its definition', () => {
    // Source: CIE S 014-2, values by its formula.
    const published = { 380: 9.7951, 450: 33.0859, 500: 59.8611, 600: 129.0427, 700: 198.2612, 780: 241.6754 }
    for (const [nm, value] of Object.entries(published)) {
      expect(Math.abs(illuminants.A[at(Number(nm))]! - value)).toBeLessThan(1e-4)
    }
  })

  it('D65 rebuilt from the daylight basis is the tabulated one', () => {
    // Source: CIE standard illuminant D65 (CIE S 014-2), table rows, 100 at 560 nm.
    const published = { 380: 49.9755, 430: 86.6823, 500: 109.3545, 560: 100, 600: 90.0062, 700: 71.6091, 780: 63.3828 }
    for (const [nm, value] of Object.entries(published)) {
      expect(Math.abs(illuminants.D65[at(Number(nm))]! - value)).toBeLessThan(0.001)
    }
  })

  it('D55 rebuilt from the daylight basis is the tabulated one', () => {
    // Source: CIE 15 table of D55, 100 at 560 nm.
    const published = { 380: 32.5835, 450: 97.9927, 500: 100.68, 600: 94.4194, 700: 82.8397, 780: 71.8176 }
    for (const [nm, value] of Object.entries(published)) {
      expect(Math.abs(illuminants.D55[at(Number(nm))]! - value)).toBeLessThan(0.005)
    }
  })
})
