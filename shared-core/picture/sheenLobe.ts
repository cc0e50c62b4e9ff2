import { cosine } from '../arithmetic/portable.ts'
import { SKIN_SURFACE_REFLECTANCE } from '../spectra/surface/fresnel.ts'
import type { Sheen } from './material.ts'

/**
 * A rough surface's mirror: GGX with Smith's joint masking (Walter et al. 2007; Heitz 2014) and Schlick's Fresnel (1994)
 * for the refractive index of skin.
 */

const F0 = SKIN_SURFACE_REFLECTANCE

/** pi times the lobe's BRDF, for cosines of light, eye and half-vector against the normal, and of the eye against the half-vector. */
export function lobe(alphaSquared: number, nl: number, nv: number, nh: number, vh: number): number {
  const spread = nh * nh * (alphaSquared - 1) + 1
  const one = 1 - vh
  const square = one * one
  const fresnel = F0 + (1 - F0) * square * square * one
  const masking = 0.5 / (nl * Math.sqrt(nv * nv * (1 - alphaSquared) + alphaSquared) +
    nv * Math.sqrt(nl * nl * (1 - alphaSquared) + alphaSquared))
  return (alphaSquared / (spread * spread)) * masking * fresnel
}

const STEPS = 32
const RINGS = 24
const SPOKES = 24
const remembered = new Map<string, Float64Array>()

/**
 * Share of light from a cosine that the sheen mirrors, all directions together, at cosine = i / STEPS: the integral of
 * the lobe over the hemisphere, by half-vectors drawn at even shares of the lobe. One spare entry at the end.
 */
export function mirroredByCosine({ alpha, strength }: Sheen): Float64Array {
  const key = `${alpha} ${strength}`
  let table = remembered.get(key)
  if (!table) {
    if (remembered.size > 64) remembered.clear()
    table = Float64Array.from({ length: STEPS + 2 }, (_, i) => strength * albedo(alpha, Math.max(0.01, Math.min(1, i / STEPS))))
    remembered.set(key, table)
  }
  return table
}

function albedo(alpha: number, nv: number): number {
  const a2 = alpha * alpha
  const vx = Math.sqrt(1 - nv * nv)
  let sum = 0
  for (let ring = 0; ring < RINGS; ring++) {
    const share = (ring + 0.5) / RINGS
    const nh = Math.sqrt((1 - share) / (1 + (a2 - 1) * share))
    const sinH = Math.sqrt(1 - nh * nh)
    for (let spoke = 0; spoke < SPOKES; spoke++) {
      const turn = (2 * Math.PI * (spoke + 0.5)) / SPOKES
      const vh = vx * sinH * cosine(turn) + nv * nh
      if (vh <= 0) continue
      const nl = 2 * vh * nh - nv
      if (nl <= 0) continue
      // The lobe over the density of half-vectors: distribution cancels, 4 vh / (nh D) is left of it.
      const spread = nh * nh * (a2 - 1) + 1
      const distribution = a2 / (spread * spread)
      sum += (lobe(a2, nl, nv, nh, vh) * nl * 4 * vh) / (nh * distribution)
    }
  }
  return sum / (RINGS * SPOKES)
}

/** Mean over all directions by cosine: 2 * integral of cosine times `table`. */
export function meanMirrored(table: Float64Array): number {
  let sum = 0
  for (let i = 0; i < STEPS; i++) {
    const at = (i + 0.5) / STEPS
    sum += (2 * at * (table[i]! + table[i + 1]!)) / 2 / STEPS
  }
  return sum
}

/** `table` between its steps. */
export function mirroredAt(table: Float64Array, cosAngle: number): number {
  const at = Math.min(1, Math.max(0, cosAngle)) * STEPS
  const i = at | 0
  return table[i]! + (table[i + 1]! - table[i]!) * (at - i)
}
