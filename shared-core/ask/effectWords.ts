import { labDifference2000 } from '../colour/difference.ts'
import { colourWords } from '../colour/hueWords.ts'
import { formatStops } from '../plan/entry/stops.ts'
import type { AreaPrediction, Prediction } from '../predict/prediction.ts'
import { differenceWords } from './differenceWords.ts'
import { shownLab, shownXyz, VISIBLE_STEP } from './visibleChange.ts'

/** A meter's last digit. */
const LEAST_STOPS = 0.1
const EVERYWHERE_WITHIN_STOPS = 0.1
/** A light seen this much larger or smaller is softer or harder (common practice, no source). */
const SOFTER_TIMES = 1.1
const LEAST_FRAME_SHARE = 0.02

interface Pair {
  readonly was: AreaPrediction
  readonly is: AreaPrediction
  readonly stops: number
}

/** How effects are told: in the trade's numbers, or without any. */
export interface EffectVoice {
  /** "+0.9", to go before "on the nose" or "everywhere" */
  level(stops: number): string
  /** What the area's colour is called. */
  hue(area: AreaPrediction): string
  /** @param widthTimes how many times as wide as before, at the subject */
  frame(widthTimes: number, now: Prediction['framing']): string
}

const TRADE_VOICE: EffectVoice = {
  level: (stops) => formatStops(stops),
  hue: (area) => colourWords(shownXyz(area)),
  frame: (widthTimes, { atSubjectWidthMetres: width, atSubjectHeightMetres: height }) =>
    `frame ${widthTimes < 1 ? 'tighter' : 'wider'}: ${Math.round(width * 100)} × ${Math.round(height * 100)} cm at the subject`,
}

/** What the difference between two predictions of a look does to the picture, the largest first; empty when nothing that shows. */
export function effectWords(before: Prediction, after: Prediction, voice = TRADE_VOICE): readonly string[] {
  const later = new Map(after.areas.map((area) => [area.id, area]))
  const pairs = before.areas.flatMap((was): Pair[] => {
    const is = later.get(was.id)
    if (!is || !was.inFrame || !is.inFrame) return []
    return [{ was, is, stops: (is.meter.stops ?? DARK) - (was.meter.stops ?? DARK) }]
  })
  return [...levelWords(pairs, voice), ...colourWordsOf(pairs, voice), ...softnessWords(before, after), ...frameWords(before, after, voice)]
}

/** Darker than this no meter reads. */
const DARK = -16

function levelWords(pairs: readonly Pair[], voice: EffectVoice): string[] {
  const stops = pairs.map((pair) => pair.stops)
  const [least, most] = [Math.min(...stops), Math.max(...stops)]
  if (pairs.length === 0 || Math.max(Math.abs(least), Math.abs(most)) < LEAST_STOPS - 0.005) return []
  if (most - least < EVERYWHERE_WITHIN_STOPS) return [`${voice.level((most + least) / 2)} everywhere`]
  const onSubject = pairs.filter(({ was }) => !isBehind(was))
  const behind = pairs.filter(({ was }) => isBehind(was))
  const up = onSubject.reduce<Pair | null>((a, b) => (b.stops > (a?.stops ?? 0) ? b : a), null)
  const down = onSubject.reduce<Pair | null>((a, b) => (b.stops < (a?.stops ?? 0) ? b : a), null)
  const background = behind.reduce<Pair | null>((a, b) => (Math.abs(b.stops) > Math.abs(a?.stops ?? 0) ? b : a), null)
  return [up, down, background].filter((pair) => pair !== null)
    .filter((pair) => Math.abs(pair.stops) >= LEAST_STOPS - 0.005)
    .sort((a, b) => Math.abs(b.stops) - Math.abs(a.stops))
    .map((pair) => `${voice.level(pair.stops)} on the ${placeWords(pair.was)}`)
}

/** The area whose colour changes most, at the same lightness; or how the picture's tones do where no meter moves. */
function colourWordsOf(pairs: readonly Pair[], voice: EffectVoice): string[] {
  const steps = pairs.map((pair) => {
    const [was, is] = [shownLab(pair.was), shownLab(pair.is)]
    return { ...pair, was, is, area: pair.was, now: pair.is, hue: labDifference2000(was, { ...is, l: was.l }), all: labDifference2000(was, is) }
  })
  const most = steps.reduce<(typeof steps)[number] | null>((a, b) => (!a || b.hue > a.hue ? b : a), null)
  if (most && most.hue >= VISIBLE_STEP) {
    const [from, to] = [voice.hue(most.area), voice.hue(most.now)]
    return [from === to ? `${placeWords(most.area)} ${differenceWords({ ...most.is, l: most.was.l }, most.was)}` : `${placeWords(most.area)} from ${from} to ${to}`]
  }
  const unmetered = steps.filter(({ stops }) => Math.abs(stops) < LEAST_STOPS)
    .reduce<(typeof steps)[number] | null>((a, b) => (!a || b.all > a.all ? b : a), null)
  return unmetered && unmetered.all >= VISIBLE_STEP ? [`${placeWords(unmetered.area)} ${differenceWords(unmetered.is, unmetered.was)}`] : []
}

function softnessWords(before: Prediction, after: Prediction): string[] {
  const behind = new Set(after.areas.filter(isBehind).map(({ id }) => id))
  const words = after.lights.flatMap((light) => {
    const was = before.lights.find(({ id }) => id === light.id)
    if (!was || !was.on || !light.on || behind.has(light.serves)) return []
    const times = light.apparentSizeDegrees / was.apparentSizeDegrees
    return times >= SOFTER_TIMES ? ['softer'] : times <= 1 / SOFTER_TIMES ? ['harder'] : []
  })
  return [...new Set(words)]
}

function frameWords({ framing: was }: Prediction, { framing: is }: Prediction, voice: EffectVoice): string[] {
  const times = is.atSubjectWidthMetres / was.atSubjectWidthMetres
  return Math.abs(times - 1) < LEAST_FRAME_SHARE ? [] : [voice.frame(times, is)]
}

const isBehind = ({ material }: AreaPrediction): boolean => material === 'backdrop' || material === 'front'

function placeWords(area: AreaPrediction): string {
  return isBehind(area) ? (area.material === 'front' ? 'lit front' : 'background') : area.label
}
