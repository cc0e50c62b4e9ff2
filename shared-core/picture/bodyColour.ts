import { WAVELENGTH_COUNT, type ReflectanceSpectrum } from '../spectra/spectrum.ts'

/** However much a surface mirrors, this share of its measured reflectance stays colour: swatches are no measurements. */
const LEAST_KEPT = 0.15

const remembered = new WeakMap<ReflectanceSpectrum, Map<number, ReflectanceSpectrum>>()

/**
 * What is left of a measured reflectance for the colour below the surface, once what the surface mirrors straight ahead
 * is taken off: (R - m) / (1 - m). The same object for the same arguments.
 * @param mirrored share, 0-1: see mirroredShare
 */
export function bodyReflectance(measured: ReflectanceSpectrum, mirrored: number): ReflectanceSpectrum {
  if (mirrored === 0) return measured
  let byShare = remembered.get(measured)
  if (!byShare) remembered.set(measured, (byShare = new Map<number, ReflectanceSpectrum>()))
  let body = byShare.get(mirrored)
  if (!body) {
    body = new Float64Array(WAVELENGTH_COUNT) as ReflectanceSpectrum
    for (let i = 0; i < WAVELENGTH_COUNT; i++) {
      body[i] = Math.max((measured[i]! - mirrored) / (1 - mirrored), LEAST_KEPT * measured[i]!)
    }
    // A sheen that is dragged leaves one curve a step behind.
    if (byShare.size >= 32) byShare.clear()
    byShare.set(mirrored, body)
  }
  return body
}
