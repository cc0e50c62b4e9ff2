import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'

/**
 * Where a sensor clips. Focal-plane exposure H = q L t / N^2 with q = 0.65 (ISO 2720 family, ISO 12232), which is for a
 * lens focused at infinity; saturation speed S = 78 / H_sat (ISO 12232). What close focus takes from the light, a tenth
 * of a stop for 85 mm at 2.5 m, is left out: an incident meter does not know of it either.
 */
export const LENS_FACTOR = 0.65
export const SATURATION_CONSTANT = 78

/**
 * Exposure in lux-seconds on a perfect white surface at which it clips: 78 pi N^2 / (q S), times the body's headroom.
 * A self-luminous front of luminance-time B counts as pi B.
 */
export function clipLuxSeconds(fNumber: number, isoSpeed: number, headroomStops = 0): number {
  const iso = (SATURATION_CONSTANT * Math.PI * fNumber * fNumber) / (LENS_FACTOR * isoSpeed)
  return iso * timesFromStops(headroomStops)
}

/** Stops of light reflected over what a spot meter calls mid-grey at this aperture; -Infinity for none. */
export function spotStopsOverGrey(luminanceTime: number, fNumber: number, isoSpeed: number, spotConstant: number): number {
  return stopsFromTimes((luminanceTime * isoSpeed) / (spotConstant * fNumber * fNumber))
}
