import { power } from '../../arithmetic/portable.ts'
import {
  spectrumOf,
  WAVELENGTH_COUNT,
  WAVELENGTH_START_NM,
  WAVELENGTH_STEP_NM,
  type ReflectanceSpectrum,
} from '../spectrum.ts'
import { SKIN_SURFACE_REFLECTANCE } from './fresnel.ts'
import { bloodAbsorption } from './haemoglobin.ts'

/**
 * Two layers: an epidermis that only absorbs (melanin), twice on the way, over a dermis that scatters and holds blood.
 * | parameter | unit | meaning |
 * | bloodShare | – | share of the dermis that is blood |
 * | saturation | – | share of haemoglobin with oxygen |
 * | vesselRadiusCm | cm | blood lies in vessels, which shade themselves where they absorb most |
 * | scatteringSlope | – | scattering ∝ λ^−slope |
 * | melaninSlope | – | melanin's optical depth ∝ λ^−slope, as it works in skin; flatter than of melanin alone |
 */
export interface SkinParameters {
  readonly bloodShare: number
  readonly saturation: number
  readonly vesselRadiusCm: number
  readonly scatteringSlope: number
  readonly melaninSlope: number
}

/** Reduced scattering of the dermis at 500 nm, cm⁻¹ (typical; from memory). Only its ratio to the blood share counts. */
const SCATTERING_AT_500 = 40

/** Light that a deep scattering layer throws back (Kubelka and Munk 1931), K/S taken as absorption over scattering. */
const deepReflectance = (absorptionPerScattering: number): number =>
  1 + absorptionPerScattering - Math.sqrt(absorptionPerScattering * (absorptionPerScattering + 2))

/** Reflectance of the dermis alone on the grid, 0-1. */
export function dermisReflectance(p: SkinParameters): Float64Array {
  const blood = bloodAbsorption(p.saturation)
  return spectrumOf<Float64Array>((nm) => {
    const whole = blood[(nm - WAVELENGTH_START_NM) / WAVELENGTH_STEP_NM] as number
    // Share of a vessel's blood that light reaches (Svaasand et al. 1995; from memory).
    const depth = 2 * whole * p.vesselRadiusCm
    const seen = depth > 1e-9 ? (1 - Math.exp(-depth)) / depth : 1
    const scattering = SCATTERING_AT_500 * power(nm / 500, -p.scatteringSlope)
    return deepReflectance((p.bloodShare * whole * seen) / scattering)
  })
}

/**
 * Share that the horny layer and the keratin above the melanin scatter back, whatever the depth of the skin. Without it
 * deep skin goes too dark in blue; set by hand on the deepest measured forearm (NIST subject 44).
 */
const ABOVE_MELANIN = 0.012

/** Melanin's optical depth at each wavelength for a depth of 1 at 500 nm. */
export function melaninDepth(slope: number): Float64Array {
  return spectrumOf<Float64Array>((nm) => power(nm / 500, -slope))
}

/**
 * Skin as an integrating sphere measures it, surface reflection included.
 * @param melanin optical depth of the epidermis at 500 nm for one passage, 0 and up.
 */
export function skinCurve(dermis: Float64Array, depths: Float64Array, melanin: number): ReflectanceSpectrum {
  const out = new Float64Array(WAVELENGTH_COUNT)
  for (let i = 0; i < WAVELENGTH_COUNT; i++) {
    const below = (dermis[i] as number) * Math.exp(-2 * melanin * (depths[i] as number))
    const body = ABOVE_MELANIN + (1 - ABOVE_MELANIN) * (1 - ABOVE_MELANIN) * below
    out[i] = SKIN_SURFACE_REFLECTANCE + (1 - SKIN_SURFACE_REFLECTANCE) * body
  }
  return out as ReflectanceSpectrum
}
