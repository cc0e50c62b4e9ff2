/** Depth of field of a symmetric thin lens; all lengths in millimetres. */
export interface FieldDepth {
  readonly hyperfocalMillimetres: number
  readonly nearMillimetres: number
  /** Infinity when sharp to the horizon. */
  readonly farMillimetres: number
  readonly totalMillimetres: number
}

/**
 * H = f^2 / (N c) + f; near = u (H - f) / (H + u - 2 f); far = u (H - f) / (H - u).
 *
 * @param subjectMillimetres > focal length
 * @param circleMillimetres circle of confusion: see `circleOfConfusionMillimetres`
 */
export function depthOfField(
  focalMillimetres: number, fNumber: number, circleMillimetres: number, subjectMillimetres: number,
): FieldDepth {
  const f = focalMillimetres
  const u = subjectMillimetres
  const hyperfocal = (f * f) / (fNumber * circleMillimetres) + f
  const near = (u * (hyperfocal - f)) / (hyperfocal + u - 2 * f)
  const far = u >= hyperfocal ? Infinity : (u * (hyperfocal - f)) / (hyperfocal - u)
  return { hyperfocalMillimetres: hyperfocal, nearMillimetres: near, farMillimetres: far, totalMillimetres: far - near }
}

/**
 * Usual circle of confusion for a sensor: 0.030 mm on 24 x 36 and in proportion to the diagonal (1/1442 of it).
 * Common practice, no source.
 */
export function circleOfConfusionMillimetres(sensorWidthMillimetres: number, sensorHeightMillimetres: number): number {
  const w = sensorWidthMillimetres
  const h = sensorHeightMillimetres
  return 0.03 * Math.sqrt((w * w + h * h) / (36 * 36 + 24 * 24))
}
