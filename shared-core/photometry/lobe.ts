import { cosine, radiansFromDegrees } from '../arithmetic/portable.ts'

/**
 * Light leaving each point of a front as radiance L0 cos^n: n = 0 is a perfect diffuser, higher is a narrower beam.
 * Integrating over the hemisphere, exitance M = 2 pi L0 / (n + 2), and the far intensity goes as cos^(n + 1).
 */

/** Radiance straight ahead for each unit of exitance, in 1/sr. `n` >= 0. */
export function axialRadiancePerExitance(n: number): number {
  return (n + 2) / (2 * Math.PI)
}

/** Exponent m of the intensity lobe whose full width at half peak is `beamDegrees`, 1-179. */
export function lobeExponentOfBeam(beamDegrees: number): number {
  return Math.log(0.5) / Math.log(cosine(radiansFromDegrees(beamDegrees / 2)))
}
