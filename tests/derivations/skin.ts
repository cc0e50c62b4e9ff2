/**
 * Derives SKIN_PARAMETERS of shared-core/spectra/surface/skin.ts. Run: npx tsx tests/derivations/skin.ts
 *
 * Fitted to the mean reflectance of 100 inner forearms alone (Cooksey, Allen, Tsai, J. Res. NIST 122, art. 26, 2017,
 * DOI 10.18434/M38597), every 10 nm. tests/reference/skin.test.ts checks the model on single people.
 */
import {
  dermisReflectance,
  melaninDepth,
  skinCurve,
  type SkinParameters,
} from '../../shared-core/spectra/surface/skinModel.ts'
import { descend } from './descend.ts'

/** 400-700 nm at 10 nm. */
const MEAN_OF_100 = [
  0.1854, 0.184, 0.1841, 0.1894, 0.2119, 0.2523, 0.282, 0.2987, 0.3071, 0.3169, 0.3276, 0.3342, 0.3345, 0.3257, 0.3166,
  0.3161, 0.323, 0.3268, 0.3349, 0.386, 0.4472, 0.493, 0.519, 0.5352, 0.547, 0.5566, 0.565, 0.574, 0.5838, 0.5953, 0.6018,
]

const parametersOf = (p: readonly number[]): SkinParameters => ({
  bloodShare: p[0]!,
  saturation: p[1]!,
  vesselRadiusCm: p[2]!,
  scatteringSlope: p[3]!,
  melaninSlope: p[4]!,
})

/** Root mean square of the relative miss. */
function missOf(p: readonly number[]): number {
  if (p.some((value) => value <= 0) || p[1]! > 1) return 10
  const parameters = parametersOf(p)
  const curve = skinCurve(dermisReflectance(parameters), melaninDepth(parameters.melaninSlope), p[5]!)
  const squares = MEAN_OF_100.map((measured, k) => Math.log(curve[4 + 2 * k]! / measured) ** 2)
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length)
}

let p: number[] = [0.01, 0.7, 0.001, 2, 2.5, 0.3]
for (let round = 0; round < 8; round++) p = descend(missOf, p, [0.005, 0.1, 0.0005, 0.5, 0.5, 0.1])
const digits = [4, 3, 5, 2, 2, 3]
const rounded = p.map((value, k) => Number(value.toFixed(digits[k])))
console.log(JSON.stringify(parametersOf(rounded)), 'melanin', rounded[5])
console.log('relative miss, root mean square:', missOf(rounded).toFixed(4))
