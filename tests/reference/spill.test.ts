import { describe, expect, it } from 'vitest'
import { xyzOfLight } from '../../shared-core/colour/xyz.ts'
import { lightThrough } from '../../shared-core/colour/xyz.ts'
import type { Xyz } from '../../shared-core/colour/triples.ts'
import { illuminants } from '../../shared-core/spectra/illuminants.ts'
import { inPhotopicUnits } from '../../shared-core/spectra/photopic.ts'
import { checkGels } from '../derivations/checkGels.ts'

/** CIE 1976 u′v′. */
const ucs = ([x, y, z]: Xyz): [number, number] => {
  const divisor = x + 15 * y + 3 * z
  return [(4 * x) / divisor, (9 * y) / divisor]
}
const distance = (a: Xyz, b: Xyz): number => Math.hypot(ucs(a)[0] - ucs(b)[0], ucs(a)[1] - ucs(b)[1])

describe('white light spilling into a gelled area', () => {
  // Source: Grassmann's law, light adds; shares of the u′v′ distance from D55 white that survive, worked apart with numpy.
  // Columns: white light 4, 3, 2, 1, 0 stops below the gelled light in luminance, and 1 above.
  const stopsBelow = [4, 3, 2, 1, 0, -1]
  const surviving = {
    orange: [0.934, 0.877, 0.781, 0.64, 0.471, 0.308],
    red: [0.937, 0.881, 0.787, 0.649, 0.48, 0.316],
    green: [0.933, 0.874, 0.776, 0.634, 0.464, 0.302],
    teal: [0.942, 0.891, 0.804, 0.672, 0.506, 0.338],
    blue: [0.968, 0.938, 0.883, 0.791, 0.654, 0.486],
  } as const
  const flash = inPhotopicUnits(illuminants.D55)
  const white = xyzOfLight(flash)
  for (const [name, shares] of Object.entries(surviving)) {
    it(`washes ${name} out as published`, () => {
      const gelled = xyzOfLight(lightThrough(flash, checkGels[name as keyof typeof surviving]))
      stopsBelow.forEach((stops, k) => {
        const spill = gelled[1] * 2 ** -stops
        const mixed: Xyz = [gelled[0] + spill * white[0], gelled[1] + spill * white[1], gelled[2] + spill * white[2]]
        expect(Math.abs(distance(mixed, white) / distance(gelled, white) - shares[k]!)).toBeLessThan(0.001)
      })
    })
  }
})
