import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'
import { clipChannels } from '../colour/camera.ts'
import { xyzFromChannels } from '../colour/cameraMatrix.ts'
import { labDifference2000, labOfXyz, type Lab } from '../colour/difference.ts'
import { intoGamut } from '../colour/display.ts'
import { applyFinish } from '../colour/finish.ts'
import type { CameraRgb } from '../colour/triples.ts'
import { fitToHead } from '../plan/fitToHead.ts'
import type { Head } from '../plan/schema/kit.ts'
import type { Finish } from '../plan/schema/look.ts'
import type { AreaPrediction } from '../predict/prediction.ts'
import { linearFromXyz, xyzFromLinear } from '../spectra/srgb.ts'

/** How far past the head's ends the nearest level is looked for, to say by how much the head falls short. */
const PAST_ENDS_STOPS = 5

/** What is looked for, and by which light. */
export interface Looked {
  readonly wanted: Lab
  /** The look's finish where colours are compared as the display shows them; null before it. */
  readonly finish: Finish | null
  readonly whiteBalanceKelvin: number
  readonly head: Head
  readonly energyJoules: number
}

/** The head's setting at which one choice of sheets comes nearest. */
export interface Setting {
  readonly energyJoules: number
  readonly difference: number
  /** From that setting to where it would come nearest were there no ends to the head; 0 within its range. */
  readonly stopsShort: number
}

/**
 * The nearest of all settings of a head: what its light gives the area in the prediction is scaled, all else there
 * stays, and the sum goes through clip, matrix and finish. Null where the light gives nothing.
 * @param veil the lens's stray light over it; null where colours are compared without
 */
export function bestSetting(area: AreaPrediction, lightId: string, looked: Looked, veil: CameraRgb | null): Setting | null {
  const own = area.byLight.find((given) => given.lightId === lightId)?.channels
  if (!own || Math.max(...own) <= 0) return null
  const { head, energyJoules } = looked
  const rest = area.colour.channels.map((channel, k) => Math.max(0, channel - own[k]!)) as unknown as CameraRgb
  const differenceAt = (joules: number): number => {
    const times = joules / energyJoules
    const channels: CameraRgb = [rest[0] + own[0] * times, rest[1] + own[1] * times, rest[2] + own[2] * times]
    return labDifference2000(labSeen(channels, veil, looked), looked.wanted)
  }
  const nearest = (energies: readonly number[]) => energies.map((joules) => ({ joules, difference: differenceAt(joules) }))
    .reduce((a, b) => (b.difference < a.difference ? b : a))
  const within = nearest(settingsOf(head))
  const atEnd = within.joules >= head.fullEnergyJoules || within.joules <= head.lowestEnergyJoules
  const free = atEnd ? nearest(pastEnd(head, within.joules)) : within
  return { energyJoules: within.joules, difference: within.difference, stopsShort: stopsFromTimes(free.joules / within.joules) || 0 }
}

/** Camera channels as they are compared: under the veil or without, after finish and gamut or as the camera gives them. */
export function labSeen(
  [red, green, blue]: CameraRgb, veil: CameraRgb | null, { finish, whiteBalanceKelvin }: Pick<Looked, 'finish' | 'whiteBalanceKelvin'>,
): Lab {
  const [veilRed, veilGreen, veilBlue] = veil ?? [0, 0, 0]
  const xyz = xyzFromChannels(clipChannels([red + veilRed, green + veilGreen, blue + veilBlue]), whiteBalanceKelvin)
  return labOfXyz(finish === null ? xyz : xyzFromLinear(intoGamut(applyFinish(linearFromXyz(xyz), finish))))
}

/** Every power the head can be set to. */
function settingsOf(head: Head): readonly number[] {
  const steps = Math.ceil(stopsFromTimes(head.fullEnergyJoules / head.lowestEnergyJoules) / head.stepStops)
  return Array.from({ length: steps + 1 }, (_, i) => fitToHead(head, head.fullEnergyJoules * timesFromStops(-i * head.stepStops)))
}

function pastEnd(head: Head, fromJoules: number): readonly number[] {
  const sign = fromJoules >= head.fullEnergyJoules ? 1 : -1
  return Array.from({ length: Math.round(PAST_ENDS_STOPS / 0.1) + 1 }, (_, i) => fromJoules * timesFromStops(sign * i * 0.1))
}
