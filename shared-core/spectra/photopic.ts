import { colourMatching } from './observer.ts'
import { WAVELENGTH_COUNT, WAVELENGTH_STEP_NM, type EmissionSpectrum } from './spectrum.ts'

/** Integral of a curve times the eye's luminosity ȳ over 380-780 nm, in the curve's unit times nm. */
export function photopicSum(curve: Float64Array): number {
  const y = colourMatching.y
  let sum = 0
  for (let i = 0; i < WAVELENGTH_COUNT; i++) sum += (curve[i] as number) * (y[i] as number)
  return sum * WAVELENGTH_STEP_NM
}

/** The same light in photopic units: ∫ S ȳ dλ = 1, so that multiplying by a luminous quantity gives it its colour. */
export function inPhotopicUnits(light: Float64Array): EmissionSpectrum {
  const sum = photopicSum(light)
  if (!(sum > 0)) throw new RangeError('a light without visible power has no photopic unit')
  return light.map((value) => value / sum) as EmissionSpectrum
}

/** Share of a light's luminous quantity that passes a curve (transmittance or reflectance), 0-1. */
export function luminousShare(light: Float64Array, curve: Float64Array): number {
  const y = colourMatching.y
  let whole = 0
  let passed = 0
  for (let i = 0; i < WAVELENGTH_COUNT; i++) {
    const seen = (light[i] as number) * (y[i] as number)
    whole += seen
    passed += seen * (curve[i] as number)
  }
  return whole > 0 ? passed / whole : 0
}
