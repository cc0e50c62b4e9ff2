import { stopsFromTimes } from '../arithmetic/portable.ts'
import { clipChannels } from '../colour/camera.ts'
import { xyzFromChannels } from '../colour/cameraMatrix.ts'
import { colourDifference2000, labOfXyz } from '../colour/difference.ts'
import type { CameraRgb, Xyz } from '../colour/triples.ts'
import type { AreaId } from '../predict/prediction.ts'
import type { Aim } from './aim.ts'
import { lightOf, lookOf, type Draft } from './draft.ts'
import type { Readings } from './lookModel.ts'
import { COLOUR_TOLERANCE, LEVEL_TOLERANCE_STOPS, TRUE_TOLERANCE_STOPS } from './want.ts'

/** A tolerance of colour weighs as much as a tolerance of level. */
const STOPS_PER_COLOUR_UNIT = LEVEL_TOLERANCE_STOPS / COLOUR_TOLERANCE
/** Solve to within this of the border, so that rounding to the steps stays inside. */
const TRUE_AIM_STOPS = 0.9 * TRUE_TOLERANCE_STOPS
/** White is a border and not a middle: short of it counts fully, past it only so much that the lowest power is found. */
const SHORT_OF_WHITE_WEIGHT = 3
const PAST_WHITE_WEIGHT = 0.02
const CLOSE_TO_WHITE_STOPS = 1e-6

/** The colour of each area under the same lights without their sheets, by area. */
export type ClearChannels = ReadonlyMap<AreaId, CameraRgb>

/** How far from what is wanted, as numbers to be made small, in stops or what weighs as much; for the solver. */
export function residuals(aim: Aim, readings: Readings, draft: Draft, clear: ClearChannels): number[] {
  const { want } = aim
  switch (want.kind) {
    case 'area-colour': {
      const now = labOfXyz(xyzOf(readings, want.areaId))
      const wanted = labOfXyz(want.xyz)
      return [now.l - wanted.l, now.a - wanted.a, now.b - wanted.b].map((miss) => miss * STOPS_PER_COLOUR_UNIT)
    }
    case 'reads-true':
      return trueShifts(want.areaId, readings, clear).map((shift) => Math.sign(shift) * Math.max(0, Math.abs(shift) - TRUE_AIM_STOPS))
    case 'white-behind': {
      const missing = readings.whiteMissingStops()
      return [missing * (missing > 0 ? SHORT_OF_WHITE_WEIGHT : PAST_WHITE_WEIGHT)]
    }
    case 'area-level':
    case 'light-level': return [missOf(aim, readings, draft, clear)]
    case 'area-gel': return want.stops === null ? [] : [gelLevelMiss(want.areaId, want.stops, aim, readings, draft)]
    case 'aperture':
    case 'iso': return []
  }
}

/** How far from what is wanted, in the unit that `Outcome.miss` says. */
export function missOf(aim: Aim, readings: Readings, draft: Draft, clear: ClearChannels): number {
  const { want, lightId } = aim
  switch (want.kind) {
    case 'area-level': return readings.areaStops(want.areaId) - want.stops
    case 'light-level': return readings.levelStops(withHelpers(want.lightId, draft)) - want.stops
    case 'area-gel': {
      const lacking = sheetsLacking(want.gelIds, draft) + (lightId === null || !carries(want.gelIds, lightId, draft) ? 1 : 0)
      if (lacking > 0) return lacking
      return want.stops === null ? 0 : gelLevelMiss(want.areaId, want.stops, aim, readings, draft)
    }
    case 'area-colour': return colourDifference2000(xyzOf(readings, want.areaId), want.xyz)
    case 'white-behind': return readings.whiteMissingStops()
    case 'reads-true': return trueShifts(want.areaId, readings, clear).reduce((worst, shift) => (Math.abs(shift) > Math.abs(worst) ? shift : worst), 0)
    case 'aperture': return 2 * stopsFromTimes(want.fNumber / lookOf(draft).camera.fNumber)
    case 'iso': return stopsFromTimes(lookOf(draft).camera.isoSpeed / want.isoSpeed)
  }
}

/** How large a miss still counts as met; a head with coarse steps cannot be nearer than half of one. */
export function toleranceOf({ want, lightId }: Aim, draft: Draft): number {
  switch (want.kind) {
    case 'area-colour': return COLOUR_TOLERANCE
    case 'reads-true': return TRUE_TOLERANCE_STOPS
    case 'white-behind': return CLOSE_TO_WHITE_STOPS
    case 'aperture':
    case 'iso': return 0.05
    default: {
      const head = lightId === null ? undefined : draft.plan.heads[lightOf(draft, lightId)?.headId ?? '']
      return Math.max(LEVEL_TOLERANCE_STOPS, (head?.stepStops ?? 0) / 2 + 0.005)
    }
  }
}

export function isMissMet(aim: Aim, miss: number, draft: Draft): boolean {
  return (aim.want.kind === 'white-behind' ? miss : Math.abs(miss)) <= toleranceOf(aim, draft)
}

/** By how much a miss is past its tolerance, weighed as stops; 0 when met. */
export function shortfallOf(aim: Aim, miss: number, draft: Draft): number {
  const past = (aim.want.kind === 'white-behind' ? miss : Math.abs(miss)) - toleranceOf(aim, draft)
  return Math.max(0, past) * (aim.want.kind === 'area-colour' ? STOPS_PER_COLOUR_UNIT : 1)
}

/** A light and those set beside it to help. */
export function withHelpers(lightId: string, { helpers }: Draft): readonly string[] {
  return [lightId, ...(helpers.get(lightId) ?? [])]
}

/** Sheets of the drawer that the look uses more often than there are, among those named. */
export function sheetsLacking(gelIds: readonly string[], draft: Draft): number {
  const used = (gelId: string): number => Object.values(lookOf(draft).lights)
    .reduce((sum, light) => sum + light.gelIds.filter((id) => id === gelId).length, 0)
  return [...new Set(gelIds)].reduce((sum, id) => sum + Math.max(0, used(id) - (draft.plan.gels[id]?.sheets ?? 0)), 0)
}

/** Neutral sheets change no colour, so they may lie with what is wanted. */
function carries(gelIds: readonly string[], lightId: string, draft: Draft): boolean {
  const coloured = (ids: readonly string[]): string =>
    ids.filter((id) => draft.plan.gels[id]?.source.from !== 'neutral').sort().join()
  return coloured(lightOf(draft, lightId).gelIds) === coloured(gelIds)
}

function gelLevelMiss(areaId: AreaId, stops: number, { lightId }: Aim, readings: Readings, draft: Draft): number {
  return readings.lightsStopsAt(areaId, lightId === null ? [] : withHelpers(lightId, draft)) - stops
}

function xyzOf(readings: Readings, areaId: AreaId): Xyz {
  return xyzFromChannels(clipChannels(readings.channels(areaId)), readings.model.whiteBalanceKelvin)
}

/** Channels against those under clear light, both brought to one brightness, in stops. */
function trueShifts(areaId: AreaId, readings: Readings, clear: ClearChannels): number[] {
  const now = atOneBrightness(readings.channels(areaId), readings.model.whiteBalanceKelvin)
  const clean = atOneBrightness(clear.get(areaId) ?? [0, 0, 0], readings.model.whiteBalanceKelvin)
  return now.map((channel, k) => channel - clean[k]!)
}

function atOneBrightness(channels: CameraRgb, whiteBalanceKelvin: number): number[] {
  const luminance = Math.max(xyzFromChannels(channels, whiteBalanceKelvin)[1], 1e-9)
  return channels.map((channel) => stopsFromTimes(Math.max(channel, 1e-9) / luminance))
}
