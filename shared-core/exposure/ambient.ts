import { stopsOverAperture } from './meter.ts'

/** Lux-seconds that steady light leaves while the shutter is open. */
export function ambientLuxSeconds(illuminanceLux: number, shutterSeconds: number): number {
  return illuminanceLux * shutterSeconds
}

/** Stops by which steady light at the subject lies over (negative: under) the taking aperture; -Infinity in the dark. */
export function ambientStops(
  illuminanceLux: number, shutterSeconds: number, fNumber: number, isoSpeed: number, incidentConstant: number,
): number {
  return stopsOverAperture(ambientLuxSeconds(illuminanceLux, shutterSeconds), fNumber, isoSpeed, incidentConstant)
}
