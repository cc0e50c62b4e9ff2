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
  const frameMean = (1 - subjectShare) * meanLevel(background) + subjectShare * meanLevel(subject)
  const blackLift = veilingGlare * frameMean
  const greyOfClip = (Math.PI * SPOT_CONSTANT * taking.fNumber * taking.fNumber) / taking.isoSpeed / taking.clipLuxSeconds
  return { frameMean, blackLift, blackStopsUnderGrey: stopsOrNull(blackLift / greyOfClip) }
}

/** Mean green channel, which stands for brightness well enough to weigh stray light. */
function meanLevel(areas: readonly AreaPrediction[]): number {
  return areas.length === 0 ? 0 : areas.reduce((sum, area) => sum + area.colour.channels[1], 0) / areas.length
}
