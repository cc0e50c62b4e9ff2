import { describe, expect, it } from 'vitest'
import { labOfXyz } from '../../shared-core/colour/difference.ts'
import { lightThrough, xyzOfLight } from '../../shared-core/colour/xyz.ts'
import { illuminants } from '../../shared-core/spectra/illuminants.ts'
import { inPhotopicUnits } from '../../shared-core/spectra/photopic.ts'
import { fresnelReflectance, SKIN_SURFACE_REFLECTANCE } from '../../shared-core/spectra/surface/fresnel.ts'
import { bloodAbsorption } from '../../shared-core/spectra/surface/haemoglobin.ts'
import { itaDegreesOf, skinReflectance } from '../../shared-core/spectra/surface/skin.ts'
import { measuredSkins } from './measuredSkins.ts'

const at = (nm: number): number => (nm - 380) / 5
const seenUnderD65 = (skin: Float64Array): readonly [number, number, number] =>
  xyzOfLight(lightThrough(inPhotopicUnits(illuminants.D65), skin))

describe('measured skins', () => {
  // Source: Cooksey, Allen, Tsai 2017 (NIST, DOI 10.18434/M38597), colours under D65, 2 degrees. XYZ tol 0.02, Lab 0.02.
  const published = {
    subject44: { xyz: [14.5588, 13.2669, 8.2537], lab: [43.163, 12.518, 17.36], ita: -21.5 },
    subject61: { xyz: null, lab: [53.5, 11.4, 21.6], ita: 9.3 },
    subject50: { xyz: [41.4521, 40.7109, 30.6928], lab: [69.973, 8.607, 17.092], ita: 49.44 },
    subject14: { xyz: [45.59, 44.9811, 38.4408], lab: [72.879, 8.298, 11.885], ita: 62.55 },
  } as const
  for (const [name, { xyz, lab, ita }] of Object.entries(published)) {
    it(`${name} has its published colour and angle`, () => {
      const skin = measuredSkins[name as keyof typeof published]
      const found = seenUnderD65(skin)
      xyz?.forEach((value, k) => expect(Math.abs(100 * found[k]! - value)).toBeLessThan(0.02))
      const { l, a, b } = labOfXyz(found)
      const tolerance = xyz ? 0.03 : 0.06
      ;[l, a, b].forEach((value, k) => expect(Math.abs(value - lab[k]!)).toBeLessThan(tolerance))
      expect(Math.abs(itaDegreesOf(skin) - ita)).toBeLessThan(0.1)
    })
  }

  it('fall in the classes of Chardon, Cretois and Hourseau 1991', () => {
    // Very light above 55, light 41-55, intermediate 28-41, tan 10-28, brown −30 to 10.
    expect(itaDegreesOf(measuredSkins.subject14)).toBeGreaterThan(55)
    expect(itaDegreesOf(measuredSkins.subject50)).toBeGreaterThan(41)
    expect(itaDegreesOf(measuredSkins.subject50)).toBeLessThan(55)
    expect(itaDegreesOf(measuredSkins.subject61)).toBeLessThan(10)
    expect(itaDegreesOf(measuredSkins.subject44)).toBeLessThan(10)
    expect(itaDegreesOf(measuredSkins.subject44)).toBeGreaterThan(-30)
  })
})

describe('the skin model against single measured people', () => {
  // Fitted to the mean of 100 only, but for one constant set on subject 44: that person's check is the weakest. People
  // of one angle differ by blood and scattering: the sample's own standard deviation is 12 % of the mean at 650 nm and
  // 23 % at 450 nm.
  for (const [name, skin] of Object.entries(measuredSkins)) {
    it(`${name}: every 20 nm from 400 to 700 within 15 %, on average within 8 %`, () => {
      const model = skinReflectance({ itaDegrees: itaDegreesOf(skin), undertone: 0 })
      const misses = Array.from({ length: 16 }, (_, k) => Math.abs(model[at(400 + 20 * k)]! / skin[at(400 + 20 * k)]! - 1))
      expect(Math.max(...misses)).toBeLessThan(0.15)
      expect(misses.reduce((sum, miss) => sum + miss, 0) / misses.length).toBeLessThan(0.08)
    })
  }

  it('a person between rows of the fit: subject 85, intermediate', () => {
    // Source: NIST as above, subject 85, ITA 36.0.
    const measured = { 400: 0.1393, 450: 0.2027, 500: 0.2738, 540: 0.2838, 600: 0.4195, 650: 0.5379, 700: 0.5956 }
    const model = skinReflectance({ itaDegrees: 36, undertone: 0 })
    for (const [nm, value] of Object.entries(measured)) {
      expect(Math.abs(model[at(Number(nm))]! / value - 1)).toBeLessThan(0.15)
    }
  })

  it('keeps the chroma of measured skins at every measured depth', () => {
    // Ranges of a* and b* found by class in the NIST set, widened by 2 for one model standing for many people.
    const classes = [
      { ita: 58, a: [6.8, 10.1], b: [11.6, 14.6] },
      { ita: 48, a: [6.6, 13.9], b: [10.9, 19.4] },
      { ita: 34, a: [7.9, 11.5], b: [15.6, 19.5] },
      { ita: 19, a: [10.2, 12.6], b: [19.2, 22.4] },
      { ita: -5, a: [11, 12.5], b: [17.4, 21.5] },
    ] as const
    for (const { ita, a, b } of classes) {
      const lab = labOfXyz(seenUnderD65(skinReflectance({ itaDegrees: ita, undertone: 0 })))
      expect(lab.a).toBeGreaterThan(a[0] - 2)
      expect(lab.a).toBeLessThan(a[1] + 2)
      expect(lab.b).toBeGreaterThan(b[0] - 2)
      expect(lab.b).toBeLessThan(b[1] + 2)
    }
  })
})

describe('shape of every modelled skin', () => {
  const undertones = [-1, 0, 1]
  it('has the angle it is asked for, from very fair to very deep', () => {
    for (const undertone of undertones) {
      for (let itaDegrees = -75; itaDegrees <= 65; itaDegrees += 5) {
        expect(Math.abs(itaDegreesOf(skinReflectance({ itaDegrees, undertone })) - itaDegrees)).toBeLessThan(0.5)
      }
    }
  })

  it('dips where oxygenated blood absorbs and climbs steeply after', () => {
    // Source: bands of oxyhaemoglobin near 540 and 575 nm (Prahl, OMLC), seen in every NIST skin.
    for (const undertone of undertones) {
      for (const itaDegrees of [62, 49, 36, 10, -21]) {
        const skin = skinReflectance({ itaDegrees, undertone })
        const value = (nm: number): number => skin[at(nm)]!
        const straightAt545 = value(515) + ((value(560) - value(515)) * 30) / 45
        const straightAt575 = value(560) + ((value(600) - value(560)) * 15) / 40
        expect(value(545)).toBeLessThan(straightAt545)
        expect(value(575)).toBeLessThan(straightAt575)
        expect((value(620) - value(580)) / value(580)).toBeGreaterThan(0.3)
      }
    }
  })

  it('holds red over blue from 1.8 when pale to 3.6 when deep', () => {
    // Source: R(650)/R(450) of NIST subjects 14, 50, 61 and 44: 1.78, 2.20, 3.35, 3.62. tol 0.4.
    const published = [[62.5, 1.78], [49.4, 2.2], [9.3, 3.35], [-21.5, 3.62]] as const
    for (const [itaDegrees, ratio] of published) {
      const skin = skinReflectance({ itaDegrees, undertone: 0 })
      expect(Math.abs(skin[at(650)]! / skin[at(450)]! - ratio)).toBeLessThan(0.4)
    }
  })

  it('gets redder with a rosy undertone and yellower-green with an olive one', () => {
    const redness = (undertone: number) => labOfXyz(seenUnderD65(skinReflectance({ itaDegrees: 40, undertone }))).a
    expect(redness(1)).toBeGreaterThan(redness(0) + 0.5)
    expect(redness(-1)).toBeLessThan(redness(0) - 0.5)
  })

  it('never throws back more than it gets, nor less than its surface does', () => {
    for (const itaDegrees of [-75, 0, 65]) {
      skinReflectance({ itaDegrees, undertone: 0 }).forEach((value) => {
        expect(value).toBeLessThan(1)
        expect(value).toBeGreaterThanOrEqual(SKIN_SURFACE_REFLECTANCE)
      })
    }
  })
})

describe('blood and surface', () => {
  it('whole blood absorbs as tabulated', () => {
    // Source: S. Prahl (OMLC), mu_a = 2.303 e x / 64500 with 150 g/L: 540 nm 285.1 cm⁻¹ with oxygen, 249.5 without.
    expect(Math.abs(bloodAbsorption(1)[at(540)]! - 285.1)).toBeLessThan(0.1)
    expect(Math.abs(bloodAbsorption(0)[at(540)]! - 249.5)).toBeLessThan(0.1)
  })

  it('sheen follows Fresnel for n = 1.4', () => {
    // Source: Fresnel's equations, unpolarised light.
    const published = [
      [0, 0.02778], [30, 0.02905], [45, 0.03658], [60, 0.07198],
      [70, 0.15027], [75, 0.23128], [80, 0.36717], [85, 0.59832],
    ] as const
    for (const [degrees, reflectance] of published) {
      expect(Math.abs(fresnelReflectance(Math.cos((degrees * Math.PI) / 180)) - reflectance)).toBeLessThan(1e-5)
    }
    expect(fresnelReflectance(0)).toBeCloseTo(1, 12)
  })
})
