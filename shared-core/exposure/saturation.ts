import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'

/**
 * Where a sensor clips. Focal-plane exposure H = q L t / N^2 with q = 0.65 (ISO 2720 family, ISO 12232); saturation speed
 * S = 78 / H_sat (ISO 12232).
 */
export const LENS_FACTOR = 0.65
export const SATURATION_CONSTANT = 78

/** Focal-plane exposure in lux-seconds of a luminance-time in cd s/m2. */
export function focalPlaneLuxSeconds(luminanceTime: number, fNumber: number): number {
  return (LENS_FACTOR * luminanceTime) / (fNumber * fNumber)
}

/**
 * Exposure in lux-seconds on a perfect white surface at which it clips: 78 pi N^2 / (q S), times the body's headroom.
 * A self-luminous front of luminance-time B counts as pi B.
 */
export function clipLuxSeconds(fNumber: number, isoSpeed: number, headroomStops = 0): number {
  const iso = (SATURATION_CONSTANT * Math.PI * fNumber * fNumber) / (LENS_FACTOR * isoSpeed)
  return iso * timesFromStops(headroomStops)
}

/** Stops that a surface of `reflectance` (0-1], metered at the aperture with constant C, lies below clip. */
export function stopsBelowClip(reflectance: number, incidentConstant: number): number {
  return stopsFromTimes((SATURATION_CONSTANT * Math.PI) / (LENS_FACTOR * reflectance * incidentConstant))
}

/** Stops that what a spot meter of constant K calls mid-grey lies below clip. */
export function spotGreyStopsBelowClip(spotConstant: number): number {
  return stopsFromTimes(SATURATION_CONSTANT / (LENS_FACTOR * spotConstant))
}

/** Stops of light reflected over what a spot meter calls mid-grey at this aperture; -Infinity for none. */
export function spotStopsOverGrey(luminanceTime: number, fNumber: number, isoSpeed: number, spotConstant: number): number {
  return stopsFromTimes((luminanceTime * isoSpeed) / (spotConstant * fNumber * fNumber))
}
