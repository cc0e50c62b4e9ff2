import type { AreaDifference } from '../../shared-core/testFrame/areaDifferences.ts'
import type { TestFrameVerdict } from '../../shared-core/testFrame/judge.ts'

/** The areas that differ, what shows most first: a stop weighs as much as six steps of colour. */
export function whatDiffers(differences: readonly AreaDifference[]): readonly AreaDifference[] {
  const weight = ({ stops, colour }: AreaDifference) => 6 * Math.abs(stops ?? 0) + colour
  return differences.filter(({ words }) => words !== 'as planned').sort((a, b) => weight(b) - weight(a))
}

/** How much of the difference was put down to the camera and is not counted. */
export function cameraWords({ exposureStops, contrast, mired }: TestFrameVerdict['camera']): string {
  const said: string[] = []
  if (Math.abs(exposureStops) >= 0.05) said.push(`${Math.abs(exposureStops).toFixed(1)} stop ${exposureStops > 0 ? 'brighter' : 'darker'}`)
  if (Math.abs(contrast) >= 0.05) said.push(`contrast ${contrast > 0 ? '+' : '−'}${Math.abs(contrast).toFixed(1)}`)
  if (Math.abs(mired) >= 3) said.push(mired > 0 ? 'a little cooler' : 'a little warmer')
  return said.length === 0
    ? 'Nothing was put down to the camera\'s own picture style.'
    : `Put down to the camera's own picture style, and not counted: ${said.join(', ')}.`
}

export function likelihoodWords(likelihood: number): string {
  if (likelihood >= 0.1) return 'quite possible'
  return likelihood >= 0.01 ? 'unlikely' : 'very unlikely'
}
