import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'

/** Exposure values (APEX, ASA PH2.5-1960): EV = Av + Tv, referred to ISO 100 unless said otherwise. */

/** EV set on a camera: log2(N^2 / t). */
export function exposureValue(fNumber: number, shutterSeconds: number): number {
  return stopsFromTimes((fNumber * fNumber) / shutterSeconds)
}

/** Tv = -log2 t. */
export function timeValue(shutterSeconds: number): number {
  return -stopsFromTimes(shutterSeconds)
}

/** Sv = log2(S / 3.125). */
export function speedValue(isoSpeed: number): number {
  return stopsFromTimes(isoSpeed / 3.125)
}

/** EV at ISO 100 of a luminance in cd/m2, for a reflected meter of constant K. */
export function exposureValueOfLuminance(luminance: number, spotConstant: number): number {
  return stopsFromTimes((luminance * 100) / spotConstant)
}

/** EV at ISO 100 of an illuminance in lux, for an incident meter of constant C. */
export function exposureValueOfIlluminance(illuminanceLux: number, incidentConstant: number): number {
  return stopsFromTimes((illuminanceLux * 100) / incidentConstant)
}

/** Lux that an incident meter of constant C reads as this EV at ISO 100. */
export function illuminanceLuxOfExposureValue(exposureValue100: number, incidentConstant: number): number {
  return (timesFromStops(exposureValue100) * incidentConstant) / 100
}

/** cd/m2 that a reflected meter of constant K reads as this EV at ISO 100. */
export function luminanceOfExposureValue(exposureValue100: number, spotConstant: number): number {
  return (timesFromStops(exposureValue100) * spotConstant) / 100
}
