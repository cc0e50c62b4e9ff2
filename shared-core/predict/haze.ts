import type { CameraRgb } from '../colour/triples.ts'
import type { AreaPrediction, Haze, Taking } from './prediction.ts'
import { SPOT_CONSTANT } from '../exposure/meter.ts'
import { stopsOrNull } from './taking.ts'

/**
 * Stray light of the lens: a share of the frame's mean lifts everything, black first. The mean counts what is past clip
 * at its full strength, for the lens scatters light before the sensor clips it.
 * @param subjectShare share of the frame that the subject covers
 * @param veilingGlare share of the mean that is spread
 */
export function hazeOf(
  background: readonly AreaPrediction[], subject: readonly AreaPrediction[], subjectShare: number,
  veilingGlare: number, taking: Taking,
): Haze {
  const means = [0, 1, 2].map((k) => (1 - subjectShare) * meanLevel(background, k) + subjectShare * meanLevel(subject, k))
  const veil = means.map((mean) => veilingGlare * mean) as unknown as CameraRgb
  // The green channel stands for brightness well enough to weigh stray light.
  const [frameMean, blackLift] = [means[1]!, veil[1]]
  const greyOfClip = (Math.PI * SPOT_CONSTANT * taking.fNumber * taking.fNumber) / taking.isoSpeed / taking.clipLuxSeconds
  return { frameMean, blackLift, veil, blackStopsUnderGrey: stopsOrNull(blackLift / greyOfClip) }
}

function meanLevel(areas: readonly AreaPrediction[], channel: number): number {
  return areas.length === 0 ? 0 : areas.reduce((sum, area) => sum + area.colour.channels[channel]!, 0) / areas.length
}
