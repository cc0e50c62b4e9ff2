import { describe, expect, it } from 'vitest'
import { lightThrough, xyzOfLight } from '../../shared-core/colour/xyz.ts'
import { illuminants } from '../../shared-core/spectra/illuminants.ts'
import { inPhotopicUnits } from '../../shared-core/spectra/photopic.ts'
import { spectrumOf } from '../../shared-core/spectra/spectrum.ts'
import { checkGels } from '../derivations/checkGels.ts'
import { measuredSkins } from './measuredSkins.ts'

const gels = { ...checkGels, clear: spectrumOf<Float64Array>(() => 1) }
const surfaces = { ...measuredSkins, white: spectrumOf<Float64Array>(() => 1) }

type Row = readonly [keyof typeof illuminants, keyof typeof gels, keyof typeof surfaces, number, number, number]

/**
 * Light × gel × surface to XYZ, scaled so that the clear light on white has Y = 1: summed with numpy apart from this
 * program from the published tables (CIE observer, CIE illuminants, NIST skins). tol 2e-4.
 */
const summedApart: readonly Row[] = [
  ['D55', 'clear', 'subject50', 0.42673, 0.41049, 0.26195],
  ['D55', 'clear', 'subject61', 0.23774, 0.21831, 0.11069],
  ['D55', 'clear', 'subject44', 0.15131, 0.13466, 0.0704],
  ['D55', 'orange', 'white', 0.53709, 0.36009, 0.01923],
  ['D55', 'orange', 'subject50', 0.2734, 0.16936, 0.00556],
  ['D55', 'teal', 'white', 0.25909, 0.40439, 0.47421],
  ['D55', 'teal', 'subject50', 0.10124, 0.15431, 0.1412],
  ['D55', 'red', 'subject44', 0.05518, 0.02454, 0.00036],
  ['D55', 'blue', 'white', 0.09387, 0.06899, 0.43821],
  ['D55', 'green', 'subject61', 0.03275, 0.0704, 0.01376],
  ['D55', 'magenta', 'white', 0.38182, 0.19023, 0.34271],
  ['D55', 'amber', 'subject50', 0.34248, 0.30095, 0.01822],
  ['A', 'clear', 'subject50', 0.53491, 0.43258, 0.10436],
  ['A', 'teal', 'white', 0.23937, 0.34428, 0.1911],
  ['A', 'magenta', 'subject50', 0.26977, 0.13239, 0.03049],
]

/** The same chain in python3-colormath 3.0.0 (BSD-3), which has its own tables at 10 nm. tol 2e-4. */
const byColormath: readonly Row[] = [
  ['D65', 'orange', 'subject50', 0.25622, 0.16105, 0.00645],
  ['D65', 'teal', 'subject50', 0.10236, 0.15712, 0.16331],
]

describe('light through a gel onto a skin', () => {
  for (const [light, gel, surface, ...published] of [...summedApart, ...byColormath]) {
    it(`${light}, ${gel}, ${surface}`, () => {
      const found = xyzOfLight(lightThrough(inPhotopicUnits(illuminants[light]), gels[gel], surfaces[surface]))
      found.forEach((value, k) => expect(Math.abs(value - published[k]!)).toBeLessThan(2e-4))
    })
  }
})
