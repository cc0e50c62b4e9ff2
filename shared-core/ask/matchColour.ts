import { labDifference2000, labOfXyz, type Lab } from '../colour/difference.ts'
import { colourWords } from '../colour/hueWords.ts'
import type { CameraRgb, Xyz } from '../colour/triples.ts'
import { applyEdit, type PlanEdit } from '../plan/edit.ts'
import { formatPower } from '../plan/entry/power.ts'
import { formatStops } from '../plan/entry/stops.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import type { AreaId, AreaPrediction, LightPrediction, Prediction } from '../predict/prediction.ts'
import { linearFromHex, xyzFromLinear } from '../spectra/srgb.ts'
import { differenceWords } from './differenceWords.ts'
import { energyChange, gelChange } from './lightChanges.ts'
import { bestSetting, labSeen, type Looked, type Setting } from './matchLevel.ts'
import { sheetChoices } from './sheetChoices.ts'
import { VISIBLE_STEP } from './visibleChange.ts'

/** Past this nobody would call two colours near (common practice, no source). */
const NEAR_DIFFERENCE = 10
/** What a second sheet must win to be worth its light and its work: what is seen without looking for it. */
const SECOND_SHEET_DIFFERENCE = VISIBLE_STEP
const MOST_WAYS = 12

/**
 * A colour of a picture as a display shows it; one off a picture of this very look, with its lens's stray light over it;
 * or one of the camera before stray light and finish, as `AreaColour.xyz`.
 */
export type ColourTarget = { readonly hex: string; readonly isOwnPicture?: boolean } | { readonly xyz: Xyz }

export interface ColourMatchWay {
  /** From tube to subject; empty is clear. */
  readonly gelIds: readonly string[]
  readonly name: string
  /** CIEDE2000 between what the area then shows and what is wanted, at the head's nearest power. */
  readonly difference: number
  /** "a shade warmer and lighter" */
  readonly words: string
  /** What the area then looks like: "deep violet". */
  readonly reached: string
  /** As a display shows it, `#rrggbb`. */
  readonly reachedDisplay: string
  readonly energyJoules: number
  readonly powerText: string
  /** This light alone at the place it serves. */
  readonly lightStops: number | null
  /** Stops by which the head cannot go where the colour would be nearest: positive lacks power, negative is too strong. */
  readonly stopsShort: number
  /** Sheets to be bought, or to be taken off other lights of the look. */
  readonly sheetsShort: number
  readonly edit: PlanEdit
}

export interface ColourMatch {
  readonly areaId: AreaId
  readonly lightId: string | null
  /** The wanted colour in words. */
  readonly wanted: string
  /** Nearest first; a second sheet counts only where it wins something that can be seen. */
  readonly ways: readonly ColourMatchWay[]
  /** False: nothing that can be hung before this light comes near. */
  readonly isNear: boolean
  readonly words: string
}

/**
 * The sheets of the drawer, singly and in twos, that bring an area nearest to a colour: every one is predicted in the
 * set as it stands, with all other lights and on the area's own surface, and the power sought on the head's own steps.
 * @param lightId the light that carries the sheets; by default the one the area belongs to
 * @throws RangeError when the plan has no such look or the text is no colour
 */
export function matchColour(
  plan: Plan, lookId: string, areaId: AreaId, target: ColourTarget, predictor: Predictor, lightId?: string,
): ColourMatch {
  const search = matchingColour(plan, lookId, areaId, target, predictor, lightId)
  for (;;) {
    const step = search.next()
    if (step.done) return step.value
  }
}

/** As `matchColour`, giving way after each sheet with the share that is done, so that a caller may stop. */
export function* matchingColour(
  plan: Plan, lookId: string, areaId: AreaId, target: ColourTarget, predictor: Predictor, lightId?: string,
): Generator<number, ColourMatch> {
  const before = predictor(plan, lookId)
  const look = plan.looks[lookId]!
  const area = before.areas.find(({ id }) => id === areaId)
  const owner = lightId ?? (area ? ownerOf(area, before.lights) : null)
  const light = owner === null ? undefined : look.lights[owner]
  const head = light && plan.heads[light.headId]
  const wantedXyz = 'hex' in target ? xyzFromLinear(linearFromHex(target.hex)) : target.xyz
  const wanted = colourWords(wantedXyz)
  if (!area || owner === null || !light || !head) {
    return { areaId, lightId: null, wanted, ways: [], isNear: false, words: 'No light of this look reaches that area' }
  }
  const looked: Looked = {
    wanted: labOfXyz(wantedXyz), finish: 'hex' in target ? look.finish : null,
    whiteBalanceKelvin: look.camera.whiteBalanceKelvin, head, energyJoules: light.energyJoules,
  }
  const isVeiled = 'hex' in target && target.isOwnPicture === true
  const choices = sheetChoices(plan, look, owner)
  const found: { choice: (typeof choices)[number]; setting: Setting }[] = []
  for (const [i, choice] of choices.entries()) {
    const gelled = predictor(applyEdit(plan, { name: 'matchColour', changes: [gelChange(lookId, owner, choice.gelIds)] }), lookId)
    const setting = bestSetting(gelled.areas.find(({ id }) => id === areaId)!, owner, looked, veilOf(gelled, isVeiled))
    if (setting) found.push({ choice, setting })
    yield (i + 1) / choices.length
  }
  found.sort((a, b) => rank(a.setting.difference, a.choice.gelIds) - rank(b.setting.difference, b.choice.gelIds))
  const ways = found.slice(0, MOST_WAYS).map(({ choice, setting }): ColourMatchWay => {
    const edit: PlanEdit = {
      name: 'matchColour', changes: [gelChange(lookId, owner, choice.gelIds), energyChange(lookId, owner, setting.energyJoules)],
    }
    return { ...choice, ...wayOf(predictor(applyEdit(plan, edit), lookId), areaId, owner, looked, isVeiled), edit,
      energyJoules: setting.energyJoules, powerText: formatPower(setting.energyJoules, head), stopsShort: setting.stopsShort }
  }).sort((a, b) => rank(a.difference, a.gelIds) - rank(b.difference, b.gelIds))
  return { areaId, lightId: owner, wanted, ways, ...verdict(ways, wanted, light.letter) }
}

/** The light metered there; on the background the strongest set for it; else the one that gives most of what is seen. */
function ownerOf(area: AreaPrediction, lights: readonly LightPrediction[]): string | null {
  const given = area.byLight.filter(({ lightId, exposureLuxSeconds }) =>
    exposureLuxSeconds > 0 && lights.some(({ id, on }) => id === lightId && on))
  const isBackground = area.material === 'backdrop' || area.material === 'front'
  const own = given.filter(({ lightId }) => lights.some((light) =>
    light.id === lightId && (light.serves === area.id || (isBackground && light.plane === 'background'))))
  const strongest = (own.length > 0 ? own : given).reduce<(typeof given)[number] | null>((a, b) => (!a || b.share > a.share ? b : a), null)
  return strongest?.lightId ?? null
}

function wayOf(
  after: Prediction, areaId: AreaId, owner: string, looked: Looked, isVeiled: boolean,
): Pick<ColourMatchWay, 'difference' | 'words' | 'reached' | 'reachedDisplay' | 'lightStops'> {
  const area = after.areas.find(({ id }) => id === areaId)!
  const lab: Lab = labSeen(area.colour.channels, veilOf(after, isVeiled), looked)
  return {
    difference: labDifference2000(lab, looked.wanted),
    words: differenceWords(lab, looked.wanted),
    reached: area.colour.words,
    reachedDisplay: area.colour.display,
    lightStops: after.lights.find(({ id }) => id === owner)?.level.stops ?? null,
  }
}

const veilOf = ({ background }: Prediction, isVeiled: boolean): CameraRgb | null => (isVeiled ? background.haze.veil : null)

const rank = (difference: number, gelIds: readonly string[]): number =>
  difference + SECOND_SHEET_DIFFERENCE * Math.max(0, gelIds.length - 1)

function verdict(ways: readonly ColourMatchWay[], wanted: string, letter: string): Pick<ColourMatch, 'isNear' | 'words'> {
  const best = ways[0]
  if (!best) return { isNear: false, words: `${letter} gives nothing there` }
  const at = best.lightStops === null ? '' : ` at ${formatStops(best.lightStops)}`
  const short = Math.abs(best.stopsShort) < 0.05 ? '' : best.stopsShort > 0
    ? `; ${letter} lacks ${best.stopsShort.toFixed(1)} stop for better`
    : `; ${letter}’s lowest is ${(-best.stopsShort).toFixed(1)} stop too strong for better`
  if (best.difference > NEAR_DIFFERENCE) {
    return { isNear: false, words: `Nothing comes near ${wanted} (${best.name} is off by ${best.difference.toFixed(0)}${short}): only paint or retouch would do it` }
  }
  return { isNear: true, words: `${best.name}${at}: ${best.words} (${best.difference.toFixed(1)})${short}` }
}
