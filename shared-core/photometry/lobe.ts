import { cosine, power, radiansFromDegrees } from '../arithmetic/portable.ts'

/**
 * Light leaving each point of a front as radiance L0 cos^n: n = 0 is a perfect diffuser, higher is a narrower beam.
 * Integrating over the hemisphere, exitance M = 2 pi L0 / (n + 2), and the far intensity goes as cos^(n + 1).
 */

/** Radiance straight ahead for each unit of exitance, in 1/sr. `n` >= 0. */
export function axialRadiancePerExitance(n: number): number {
  return (n + 2) / (2 * Math.PI)
}

/** Intensity straight ahead for each lumen of a lobe I = I0 cos^m, in cd/lm. `m` >= 0. */
export function axialIntensityPerLumen(m: number): number {
  return (m + 1) / (2 * Math.PI)
}

/** Half-angle in radians at which cos^m has fallen to `share` (0-1) of its peak. `m` > 0. */
export function lobeHalfAngleRadians(m: number, share: number): number {
  return Math.acos(power(share, 1 / m))
}

/** Share of a cos^m lobe's flux within `halfAngleRadians` of its axis. */
export function lobeFluxWithin(m: number, halfAngleRadians: number): number {
  return 1 - power(Math.max(0, cosine(halfAngleRadians)), m + 1)
}

/** Exponent m of the intensity lobe whose full width at half peak is `beamDegrees`, 1-179. */
export function lobeExponentOfBeam(beamDegrees: number): number {
  return Math.log(0.5) / Math.log(cosine(radiansFromDegrees(beamDegrees / 2)))
}
