import { stopsFromTimes } from '../arithmetic/portable.ts'

/**
 * What meters make of light. Incident: N^2 = H S / C for flash, N^2 / t = E S / C for steady light; reflected:
 * N^2 / t = L S / K (ISO 2720:1974; for flash ISO 10157:1991 with the time integral in place of E t).
 */

/** Usual reflected constant; ISO 2720 allows 10.6-13.4. */
export const SPOT_CONSTANT = 12.5

/**
 * f-number a flash meter shows.
 *
 * @param exposureLuxSeconds at the receptor, >= 0; none gives 0
 * @param isoSpeed arithmetic ISO speed, > 0
 * @param constant C of the receptor in lux-second terms
 */
export function incidentFNumber(exposureLuxSeconds: number, isoSpeed: number, constant: number): number {
  return Math.sqrt((exposureLuxSeconds * isoSpeed) / constant)
}

/** Lux-seconds that an incident meter reads as `fNumber`. */
export function incidentLuxSeconds(fNumber: number, isoSpeed: number, constant: number): number {
  return (fNumber * fNumber * constant) / isoSpeed
}

/** Stops by which an exposure lies over (positive) the taking aperture; -Infinity for none. */
export function stopsOverAperture(
  exposureLuxSeconds: number, fNumber: number, isoSpeed: number, constant: number,
): number {
  return stopsFromTimes(exposureLuxSeconds / incidentLuxSeconds(fNumber, isoSpeed, constant))
}
