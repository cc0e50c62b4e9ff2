import { degreesFromRadians, power } from '../../arithmetic/portable.ts'
import { boundedMemo } from '../boundedMemo.ts'
import { illuminants } from '../illuminants.ts'
import { colourMatching } from '../observer.ts'
import { responseRow } from '../responseRow.ts'
import { WAVELENGTH_COUNT, type ReflectanceSpectrum } from '../spectrum.ts'
import { dermisReflectance, melaninDepth, skinCurve, type SkinParameters } from './skinModel.ts'

/**
 * Fitted by tests/derivations/skin.ts to the mean of 100 measured skins (Cooksey, Allen, Tsai 2017,
 * DOI 10.18434/M38597), 400-700 nm. Single skins are left to check it.
 */
export const SKIN_PARAMETERS: SkinParameters = {
  bloodShare: 0.0204,
  saturation: 0.725,
  vesselRadiusCm: 0.00065,
  scatteringSlope: 3.1,
  melaninSlope: 2.08,
}

/** How much more blood shows at a rosy undertone of 1 (and less at olive, −1): about the spread between people. */
const BLOOD_PER_UNDERTONE = 1.5

/** Deeper than any skin. */
const MOST_MELANIN = 6

export interface SkinTone {
  /** Individual typology angle: about 60 very fair, 10 tan, −60 very deep. */
  readonly itaDegrees: number
  /** −1 olive, 0 neutral, 1 rosy. */
  readonly undertone: number
}

const rowY = responseRow(illuminants.D65, colourMatching.y)
const rowZ = responseRow(illuminants.D65, colourMatching.z)

const labRoot = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116)

/**
 * Individual typology angle of a reflectance under D65, in degrees: atan((L* − 50) / b*)
 * (Chardon, Cretois, Hourseau 1991). Above 55 very light, 41-55 light, 28-41 intermediate, 10-28 tan, −30-10 brown.
 */
export function itaDegreesOf(reflectance: Float64Array): number {
  let y = 0
  let z = 0
  for (let i = 0; i < WAVELENGTH_COUNT; i++) {
    y += (reflectance[i] as number) * (rowY[i] as number)
    z += (reflectance[i] as number) * (rowZ[i] as number)
  }
  const lightness = 116 * labRoot(y) - 16
  const yellowness = 200 * (labRoot(y) - labRoot(z))
  return degreesFromRadians(Math.atan2(lightness - 50, yellowness))
}

/**
 * Reflectance of matt skin of a depth and undertone, surface reflection included (what a sphere measures). For dewy
 * skin take SKIN_SURFACE_REFLECTANCE off and give it back as sheen by fresnelReflectance.
 *
 * The melanin is found by halving so that the curve's own angle under D65 is the one asked. Real skins of one angle
 * differ; measured inner forearms lie within about 15 % of this curve.
 * @param tone angle −75 to 65, undertone −1 to 1; an angle past what skin without melanin has gives that skin.
 */
export const skinReflectance: (tone: SkinTone) => ReflectanceSpectrum = boundedMemo(
  64,
  ({ itaDegrees, undertone }) => `${itaDegrees} ${undertone}`,
  ({ itaDegrees, undertone }) => {
    const blood = SKIN_PARAMETERS.bloodShare * power(BLOOD_PER_UNDERTONE, undertone)
    const dermis = dermisReflectance({ ...SKIN_PARAMETERS, bloodShare: blood })
    const depths = melaninDepth(SKIN_PARAMETERS.melaninSlope)
    let fair = 0
    let deep = MOST_MELANIN
    for (let halving = 0; halving < 30; halving++) {
      const middle = (fair + deep) / 2
      if (itaDegreesOf(skinCurve(dermis, depths, middle)) > itaDegrees) fair = middle
      else deep = middle
    }
    return skinCurve(dermis, depths, (fair + deep) / 2)
  },
)
