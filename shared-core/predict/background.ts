import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'
import { clipChannels } from '../colour/camera.ts'
import { xyzFromChannels } from '../colour/cameraMatrix.ts'
import { applyFinish } from '../colour/finish.ts'
import { colourWords } from '../colour/hueWords.ts'
import type { CameraRgb, LinearSrgb } from '../colour/triples.ts'
import type { Finish, Look } from '../plan/schema/look.ts'
import { linearFromXyz } from '../spectra/srgb.ts'
import { hazeOf } from './haze.ts'
import type { AreaPrediction, BackgroundPrediction, BackgroundSpot, LightPrediction, Taking, WhiteVerdict, Wrap } from './prediction.ts'
import { stopsOrNull } from './taking.ts'

/** 253 of 255 in sRGB: nobody sees a cast in what is left. */
const DISPLAY_WHITE = 0.982
/** Where wrap from behind shows: the edges of face, neck and shoulders. */
const WRAP_AREAS = ['jaw-left', 'jaw-right', 'rear-jaw-left', 'rear-jaw-right', 'neck', 'shoulder-left', 'shoulder-right']
const LONGEST_PULL_STOPS = 2
const STEEPEST_CONTRAST = 1

export interface BackgroundParts {
  readonly look: Look
  readonly taking: Taking
  readonly areas: readonly AreaPrediction[]
  readonly lights: readonly LightPrediction[]
  /** What the frame's middle meets behind the subject. */
  readonly behind: BackgroundPrediction['behind']
  /** Share of the frame that the subject covers, 0-1. */
  readonly subjectShare: number
}

/** The one verdict on whether the background is white: spot by spot, as a whole, in camera and after the finish; and how even it is. */
export function backgroundPrediction(parts: BackgroundParts): BackgroundPrediction {
  const { look, taking, areas, behind, subjectShare } = parts
  const spotAreas = areas.filter((area) => area.id.startsWith('background-'))
  const spots = spotAreas.map((area) => backgroundSpot(area, taking, look.finish))
  const stopsMissing = spots.reduce<number | null>(
    (worst, spot) => (worst === null || spot.stopsMissing === null ? null : Math.max(worst, spot.stopsMissing)), -Infinity)
  return {
    behind,
    spots,
    verdict: worstOf(spots.map((spot) => spot.verdict)),
    verdictAfterFinish: worstOf(spots.map((spot) => spot.verdictAfterFinish)),
    stopsMissing,
    unevennessStops: unevenness(spotAreas),
    whitePointPullStops: smallestThat(LONGEST_PULL_STOPS, (pull) =>
      everySpotWhite(spotAreas, taking, { ...look.finish, whitePointStops: pull })),
    contrastPull: smallestThat(STEEPEST_CONTRAST, (contrast) =>
      everySpotWhite(spotAreas, taking, { ...look.finish, contrast })),
    wrap: wrapOf(parts, stopsMissing),
    haze: hazeOf(spotAreas, areas.filter((area) => area.inFrame && isSubject(area)), subjectShare, look.camera.veilingGlare, taking),
  }
}

function backgroundSpot(area: AreaPrediction, taking: Taking, finish: Finish): BackgroundSpot {
  const { channels } = area.colour
  const weakest = Math.min(...channels)
  const clipped = clipChannels(channels)
  const verdict = verdictOf(clipped, 1)
  return {
    areaId: area.id,
    label: area.label,
    verdict,
    verdictAfterFinish: verdictOf(finished(channels, taking, finish), DISPLAY_WHITE),
    stopsMissing: negated(stopsOrNull(weakest)),
    cast: verdict === 'white' ? '' : colourWords(xyzFromChannels(clipped, taking.whiteBalanceKelvin)),
    castStops: weakest > 0 ? stopsFromTimes(Math.max(...clipped) / Math.min(...clipped)) : 0,
  }
}

function verdictOf(values: CameraRgb | LinearSrgb, white: number): WhiteVerdict {
  if (Math.min(...values) >= white) return 'white'
  return Math.max(...values) >= white ? 'cast-left' : 'not-white'
}

function finished(channels: CameraRgb, taking: Taking, finish: Finish): LinearSrgb {
  return applyFinish(linearFromXyz(xyzFromChannels(clipChannels(channels), taking.whiteBalanceKelvin)), finish)
}

function everySpotWhite(spots: readonly AreaPrediction[], taking: Taking, finish: Finish): boolean {
  return spots.every((spot) => verdictOf(finished(spot.colour.channels, taking, finish), DISPLAY_WHITE) === 'white')
}

/** The smallest setting, in twentieths, that does it; null when the largest does not. */
function smallestThat(largest: number, does: (setting: number) => boolean): number | null {
  if (!does(largest)) return null
  let low = 0
  let high = Math.round(largest * 20)
  while (low < high) {
    const middle = Math.floor((low + high) / 2)
    if (does(middle / 20)) high = middle
    else low = middle + 1
  }
  return high / 20
}

function unevenness(spots: readonly AreaPrediction[]): number {
  const levels = spots.map((spot) => spot.colour.spotStopsOverGrey).filter((level) => level !== null)
  if (levels.length < 2) return 0
  return Math.max(...levels) - Math.min(...levels)
}

/**
 * How hot the light from behind wraps onto the subject, now and once the background reads white. Every stop the
 * background still needs, the wrap gains too.
 */
function wrapOf({ areas, lights }: BackgroundParts, stopsMissing: number | null): Wrap | null {
  const behindLights = new Set(lights.filter((light) => light.on && light.plane === 'background').map((light) => light.id))
  let hottest: { areaId: string; timesAperture: number; channel: number } | null = null
  for (const area of areas) {
    if (!WRAP_AREAS.includes(area.id)) continue
    let timesAperture = 0
    const channels: [number, number, number] = [0, 0, 0]
    for (const given of area.byLight) {
      if (!behindLights.has(given.lightId)) continue
      if (given.stops !== null) timesAperture += timesFromStops(given.stops)
      given.channels.forEach((value, k) => { channels[k]! += value })
    }
    if (!hottest || timesAperture > hottest.timesAperture) hottest = { areaId: area.id, timesAperture, channel: Math.max(...channels) }
  }
  if (!hottest) return null
  const stopsNow = stopsOrNull(hottest.timesAperture)
  if (stopsNow === null) return null
  const times = stopsMissing === null ? null : timesFromStops(stopsMissing)
  return {
    areaId: hottest.areaId,
    stopsNow,
    stopsWhenWhite: stopsMissing === null ? null : stopsNow + stopsMissing,
    hottestChannelStopsWhenWhite: times === null ? null : stopsOrNull(hottest.channel * times),
  }
}

function isSubject(area: AreaPrediction): boolean {
  return area.material === 'skin' || area.material === 'lips' || area.material === 'hair' || area.material === 'cloth'
}

function worstOf(verdicts: readonly WhiteVerdict[]): WhiteVerdict {
  if (verdicts.includes('not-white')) return 'not-white'
  return verdicts.includes('cast-left') ? 'cast-left' : 'white'
}

function negated(stops: number | null): number | null {
  return stops === null ? null : -stops
}
