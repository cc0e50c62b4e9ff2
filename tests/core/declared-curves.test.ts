import { describe, expect, it } from 'vitest'
import { colourDifference2000 } from '../../shared-core/colour/difference.ts'
import type { Xyz } from '../../shared-core/colour/triples.ts'
import { lightThrough, xyzOfLight } from '../../shared-core/colour/xyz.ts'
import { declaredGel } from '../../shared-core/spectra/gel/declared.ts'
import { illuminants } from '../../shared-core/spectra/illuminants.ts'
import { inPhotopicUnits, luminousShare } from '../../shared-core/spectra/photopic.ts'
import { linearFromHex, SRGB_WHITE_XYZ, xyzFromLinear } from '../../shared-core/spectra/srgb.ts'
import { reflectanceOfSwatch } from '../../shared-core/spectra/surface/swatch.ts'

const daylight = inPhotopicUnits(illuminants.D65)
const daylightWhite = xyzOfLight(daylight)

/** Colour of a surface in daylight, against sRGB's white. */
const seen = (curve: Float64Array): Xyz =>
  xyzOfLight(lightThrough(daylight, curve)).map(
    (value, k) => (value / daylightWhite[k]!) * SRGB_WHITE_XYZ[k]!,
  ) as unknown as Xyz

const slope = (curve: Float64Array): number => curve.slice(1).reduce((sum, value, i) => sum + (value - curve[i]!) ** 2, 0)

describe('reflectance of a swatch', () => {
  it('shows the colour it was made from', () => {
    const colours = ['#7c7c7c', '#c69676', '#f0e0d0', '#123456', '#804020', '#2f6f3f', '#b03040', '#e0c030', '#101010']
    for (const hex of colours) {
      expect(colourDifference2000(seen(reflectanceOfSwatch(hex)), xyzFromLinear(linearFromHex(hex)))).toBeLessThan(0.01)
    }
  })

  it('stays between nothing and 98 %, whatever it is asked for', () => {
    for (const hex of ['#ffffff', '#000000', '#ff0000', '#00ff00', '#0000ff', '#ffff00', '#00ffff', '#ff00ff']) {
      reflectanceOfSwatch(hex).forEach((value) => {
        expect(value).toBeGreaterThanOrEqual(0)
        expect(value).toBeLessThanOrEqual(0.98)
      })
    }
  })

  it('gives the nearest where white is asked for', () => {
    reflectanceOfSwatch('#ffffff').forEach((value) => expect(value).toBeCloseTo(0.98, 3))
  })

  it('is flat for greys', () => {
    const [r] = linearFromHex('#7c7c7c')
    reflectanceOfSwatch('#7c7c7c').forEach((value) => expect(value).toBeCloseTo(r, 5))
  })

  it('is smoother than any other curve of the colour', () => {
    // Adding any small change that the eye does not see under D65 (orthogonal to the three responses) makes it rougher.
    const best = reflectanceOfSwatch('#c69676')
    const rough = Float64Array.from(best, (value, i) => value + 0.01 * Math.sin(i / 3))
    const miss = seen(rough).map((value, k) => value - seen(best)[k]!)
    expect(Math.max(...miss.map(Math.abs))).toBeLessThan(0.01)
    expect(slope(rough)).toBeGreaterThan(slope(best))
  })

  it('refuses what is no colour', () => expect(() => reflectanceOfSwatch('grey')).toThrow(RangeError))
})

describe('a gel from a declared colour and loss', () => {
  const chromaticity = ([x, y, z]: Xyz) => [x / (x + y + z), y / (x + y + z)]
  it('has both where both can be had', () => {
    const declared = [['#ff9a50', 0.8], ['#8fd060', 0.6], ['#5020c0', 4], ['#ffffff', 1], ['#d0c0f0', 1.2]] as const
    for (const [colour, lossStops] of declared) {
      const gel = declaredGel({ colour, lossStops })
      expect(gel.reached).toBe(true)
      expect(Math.abs(-Math.log2(luminousShare(illuminants.D55, gel.transmittance)) - lossStops)).toBeLessThan(0.01)
      const found = chromaticity(seen(gel.transmittance))
      const wanted = chromaticity(xyzFromLinear(linearFromHex(colour)))
      wanted.forEach((value, k) => expect(Math.abs(found[k]! - value)).toBeLessThan(0.002))
    }
  })

  it('keeps the colour and tells the least loss where no sheet could pass so much', () => {
    const gel = declaredGel({ colour: '#0000ff', lossStops: 1 })
    expect(gel.reached).toBe(false)
    expect(gel.lossStops).toBeGreaterThan(2)
    const found = chromaticity(seen(gel.transmittance))
    // (0.15, 0.06) is sRGB's blue (IEC 61966-2-1).
    expect(Math.abs(found[0]! - 0.15)).toBeLessThan(0.003)
    expect(Math.abs(found[1]! - 0.06)).toBeLessThan(0.003)
    expect(declaredGel({ colour: '#0000ff', lossStops: gel.lossStops + 0.1 }).reached).toBe(true)
  })

  it('stays within 0 and 1', () => {
    for (const lossStops of [0, 0.3, 9.5]) {
      declaredGel({ colour: '#ff4020', lossStops }).transmittance.forEach((share) => {
        expect(share).toBeGreaterThanOrEqual(0)
        expect(share).toBeLessThanOrEqual(1)
      })
    }
  })
})
