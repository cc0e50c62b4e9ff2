import { describe, expect, it } from 'vitest'
import { circleOfConfusionMillimetres, depthOfField } from '../../shared-core/exposure/depthOfField.ts'
import { anglesOfView, cameraView } from '../../shared-core/set/camera.ts'
import { at } from '../core/studioScene.ts'

/** Thin lens: FOV = 2 atan(s / 2f); H = f^2 / (N c) + f, checked against a numerical blur-circle solution to 0.1 mm. */

const SENSORS = [
  ['36 x 24', 36, 24, [[24, 73.74, 53.13, 84.06], [50, 39.6, 26.99, 46.79], [85, 23.91, 16.07, 28.56], [135, 15.19, 10.16, 18.21]]],
  ['23.6 x 15.7', 23.6, 15.7, [[35, 37.26, 25.28, 44.09], [85, 15.81, 10.55, 18.93]]],
  ['43.8 x 32.9', 43.8, 32.9, [[50, 47.31, 36.42, 57.43], [105, 23.56, 17.81, 29.24]]],
  ['17.3 x 13', 17.3, 13, [[24, 39.64, 30.31, 48.53], [105, 9.42, 7.08, 11.77]]],
] as const

describe('angle of view', () => {
  it.each(SENSORS)('%s', (_, width, height, rows) => {
    for (const [focal, horizontal, vertical, diagonal] of rows) {
      const angles = anglesOfView(cameraView({
        place: at(0, -2, 1.5), aim: at(0, 0, 1.5), focalLengthMillimetres: focal,
        sensorWidthMillimetres: width, sensorHeightMillimetres: height,
      }))
      expect(angles.horizontalDegrees).toBeCloseTo(horizontal, 2)
      expect(angles.verticalDegrees).toBeCloseTo(vertical, 2)
      expect(angles.diagonalDegrees).toBeCloseTo(diagonal, 2)
    }
  })
})

describe('depth of field', () => {
  it.each([
    [50, 8, 0.03, 3000, 10466.7, 2337.9, 4185.3, 1847.4], [85, 8, 0.03, 2500, 30189.2, 2314.3, 2718, 403.7],
    [85, 11, 0.03, 2000, 21978.9, 1839.1, 2191.7, 352.6], [85, 1.8, 0.03, 2000, 133881.3, 1971.8, 2029, 57.3],
    [105, 2.8, 0.03, 2000, 131355, 1971.5, 2029.3, 57.8], [35, 5.6, 0.02, 2000, 10972.5, 1695.4, 2438, 742.6],
    [50, 16, 0.03, 1000, 5258.3, 845.7, 1223.1, 377.4],
  ])('%d mm f/%d, circle %d, at %d mm', (focal, fNumber, circle, distance, hyperfocal, near, far, total) => {
    const field = depthOfField(focal, fNumber, circle, distance)
    expect(field.hyperfocalMillimetres).toBeCloseTo(hyperfocal, 1)
    expect(field.nearMillimetres).toBeCloseTo(near, 1)
    expect(field.farMillimetres).toBeCloseTo(far, 1)
    expect(field.totalMillimetres).toBeCloseTo(total, 1)
  })

  it('reaches the horizon from the hyperfocal distance on', () => {
    const { hyperfocalMillimetres } = depthOfField(50, 8, 0.03, 3000)
    expect(depthOfField(50, 8, 0.03, hyperfocalMillimetres).farMillimetres).toBe(Infinity)
  })

  // Common practice, no source: 0.030 mm on 24 x 36, 0.020 on 15.7 x 23.6, 0.015 on 13 x 17.3.
  it.each([[36, 24, 0.03], [23.6, 15.7, 0.02], [17.3, 13, 0.015]])('circle of confusion on %d x %d', (width, height, circle) =>
    expect(circleOfConfusionMillimetres(width, height)).toBeCloseTo(circle, 3))
})
