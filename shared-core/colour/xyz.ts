import { colourMatching } from '../spectra/observer.ts'
import { WAVELENGTH_COUNT, WAVELENGTH_STEP_NM } from '../spectra/spectrum.ts'
import type { Xyz } from './triples.ts'

/**
 * CIE 1931 tristimulus of a light, ∫ S x̄ȳz̄ dλ as sums at 5 nm over 380-780 nm (CIE 15), in the unit of the curve times
 * nm: a flash in photopic units has Y = 1. Not adapted: white is the light's own.
 * @param light emission, or emission already multiplied by transmittance and reflectance.
 */
export function xyzOfLight(light: Float64Array): Xyz {
  const { x, y, z } = colourMatching
  let sumX = 0
  let sumY = 0
  let sumZ = 0
  for (let i = 0; i < WAVELENGTH_COUNT; i++) {
    const power = light[i] as number
    sumX += power * (x[i] as number)
    sumY += power * (y[i] as number)
    sumZ += power * (z[i] as number)
  }
  return [sumX * WAVELENGTH_STEP_NM, sumY * WAVELENGTH_STEP_NM, sumZ * WAVELENGTH_STEP_NM]
}

/** Product of curves point by point: light × transmittance × reflectance. */
export function lightThrough(light: Float64Array, ...curves: readonly Float64Array[]): Float64Array {
  const out = Float64Array.from(light)
  for (const curve of curves) {
    for (let i = 0; i < WAVELENGTH_COUNT; i++) out[i] = (out[i] as number) * (curve[i] as number)
  }
  return out
}

/** CIE 1960 UCS (u, v), in which colour temperature is judged. */
export function ucs1960Of([X, Y, Z]: Xyz): { u: number; v: number } {
  const divisor = X + 15 * Y + 3 * Z
  return divisor > 0 ? { u: (4 * X) / divisor, v: (6 * Y) / divisor } : { u: 4 / 19, v: 6 / 19 }
}
