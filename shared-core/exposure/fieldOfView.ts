import { degreesFromRadians } from '../arithmetic/portable.ts'
import { magnification } from './depthOfField.ts'

/** Angle of view in degrees along one side of the sensor, focused at infinity: 2 atan(s / 2 f). Millimetres. */
export function angleOfViewDegrees(sensorMillimetres: number, focalMillimetres: number): number {
  return degreesFromRadians(2 * Math.atan(sensorMillimetres / (2 * focalMillimetres)))
}

/** Field in millimetres along one side of the sensor at the focused distance, for a simple thin lens: s / m. */
export function thinLensFieldMillimetres(
  sensorMillimetres: number, focalMillimetres: number, subjectMillimetres: number,
): number {
  return sensorMillimetres / magnification(focalMillimetres, subjectMillimetres)
}
