import { stopsFromTimes } from '../arithmetic/portable.ts'
import { colourDifference2000 } from '../colour/difference.ts'
import { formatIso } from '../plan/entry/camera.ts'
import { formatStops, stopsInWords } from '../plan/entry/stops.ts'
import type { AreaId, LightPrediction, Prediction, Spill } from '../predict/prediction.ts'
import { lookOf, type Draft } from './draft.ts'
import { sheetsLacking } from './judge.ts'
import { COLOUR_TOLERANCE, MARGIN_STOPS } from './want.ts'

/** Changes smaller than these are not worth a line. */
const WORTH_TELLING_SECONDS = 0.1
const WORTH_TELLING_TIMES = 1.1
const WORTH_TELLING_STOPS = 1 / 3
const WORSE_SPILL_STOPS = 0.1
const MOST_AREAS_TOLD = 2
/** These snags have lines of their own here. */
const TOLD_ELSEWHERE: readonly string[] = ['out-of-power', 'too-strong', 'spill', 'second-colour']

interface Cost {
  readonly words: string
  /** How much it weighs: worst is told first. */
  readonly weight: number
}

/** A look before and after, as planned and as predicted. */
export interface Step {
  readonly before: Draft
  readonly after: Draft
  readonly from: Prediction
  readonly to: Prediction
}

/**
 * What a way costs, in words, worst first.
 * @param wantedIds areas that were spoken of, whose change is no cost
 */
export function costsOf(step: Step, wantedIds: ReadonlySet<AreaId>): string[] {
  const costs = [
    ...newSnags(step), ...inHand(step), ...noise(step), ...spill(step), ...lightCosts(step), ...sheets(step), ...otherAreas(step, wantedIds),
  ]
  return costs.sort((a, b) => b.weight - a.weight).map(({ words }) => words)
}

function newSnags({ from, to }: Step): Cost[] {
  const known = new Set(from.snags.map(({ key }) => key))
  const fresh = to.snags.filter(({ key, rule }) => !known.has(key) && !TOLD_ELSEWHERE.includes(rule))
  // A rule broken in many places is told once, with its first place.
  const first = fresh.filter(({ rule }, at) => fresh.findIndex((other) => other.rule === rule) === at)
  return first.map(({ rule, severity, message }): Cost => {
    const more = fresh.filter((other) => other.rule === rule).length - 1
    const words = more === 0 ? message : `${message}, and in ${more} more ${more === 1 ? 'place' : 'places'}`
    return { words, weight: severity === 'stop' ? 10 : severity === 'look' ? 5 : 1 }
  })
}

function inHand({ before, after, to }: Step): Cost[] {
  return to.lights.flatMap((light): Cost[] => {
    const old = lookOf(before).lights[light.id]
    if (!light.on || (old && old === lookOf(after).lights[light.id])) return []
    const least = Math.min(light.stopsInHand, light.stopsAboveLowest)
    if (least >= MARGIN_STOPS - 0.01) return []
    const end = light.stopsInHand <= light.stopsAboveLowest ? 'in hand' : 'above its lowest'
    return [{ words: `${light.letter} has only ${stopsInWords(Math.max(0, least))} ${end}`, weight: 4 }]
  })
}

function noise({ from, to }: Step): Cost[] {
  const stops = stopsFromTimes(to.taking.isoSpeed / from.taking.isoSpeed)
  if (Math.abs(stops) < 0.05) return []
  return [{ words: `${formatIso(to.taking.isoSpeed)}: ${stopsInWords(stops)} ${stops > 0 ? 'more' : 'less'} noise`, weight: stops > 0 ? 2 + stops : 0.1 }]
}

/** Spill that got worse and is too much: of each light only where it is worst. */
function spill({ from, to }: Step): Cost[] {
  const worse = to.spills.filter((each) => {
    const old = from.spills.find((one) => one.areaId === each.areaId && one.diluterLightId === each.diluterLightId)
    return each.stopsUnder < each.thresholdStops && !(old && old.stopsUnder - each.stopsUnder < WORSE_SPILL_STOPS)
  })
  const past = (each: Spill): number => each.thresholdStops - each.stopsUnder
  const worst = worse.filter((each) => worse.every((other) => other.diluterLightId !== each.diluterLightId || past(other) <= past(each)))
  return worst.map((each): Cost => {
    const under = each.stopsUnder >= 0 ? `${each.stopsUnder.toFixed(1)} under` : `${(-each.stopsUnder).toFixed(1)} over`
    const words = `${letterOf(to, each.diluterLightId)} spills on the ${each.areaLabel}: ${under}, wants ${each.thresholdStops.toFixed(1)} under`
    return { words, weight: 2 + past(each) / 4 }
  })
}

function lightCosts({ from, to }: Step): Cost[] {
  return to.lights.flatMap((light): Cost[] => {
    const old = from.lights.find(({ id }) => id === light.id)
    return old && light.on ? [...recycle(old, light), ...softness(old, light)] : []
  })
}

function recycle(old: LightPrediction, light: LightPrediction): Cost[] {
  if (light.recycleSeconds < old.recycleSeconds + WORTH_TELLING_SECONDS) return []
  return [{ words: `${light.letter} recycles in ${light.recycleSeconds.toFixed(1)} s (was ${old.recycleSeconds.toFixed(1)})`, weight: light.recycleSeconds - old.recycleSeconds }]
}

function softness(old: LightPrediction, light: LightPrediction): Cost[] {
  const times = light.apparentSizeDegrees / old.apparentSizeDegrees
  if (times < WORTH_TELLING_TIMES && times > 1 / WORTH_TELLING_TIMES) return []
  const sizes = `${Math.round(light.apparentSizeDegrees)}° across, was ${Math.round(old.apparentSizeDegrees)}°`
  return [{ words: `${light.letter} ${times > 1 ? 'softer' : 'harder'}: ${sizes}`, weight: times > 1 ? 0.5 : 1.5 }]
}

function sheets({ before, after }: Step): Cost[] {
  const ids = new Set(Object.values(lookOf(after).lights).flatMap(({ gelIds }) => gelIds))
  return [...ids].flatMap((id): Cost[] => {
    const lacking = sheetsLacking([id], after)
    if (lacking === 0 || sheetsLacking([id], before) >= lacking) return []
    return [{ words: `${lacking} more ${lacking === 1 ? 'sheet' : 'sheets'} of ${after.plan.gels[id]?.name ?? id} to buy`, weight: 4 }]
  })
}

/** Areas in frame nobody spoke of that change where one would see it. */
function otherAreas({ from, to }: Step, wantedIds: ReadonlySet<AreaId>): Cost[] {
  const found = to.areas.flatMap((area): Cost[] => {
    const old = from.areas.find(({ id }) => id === area.id)
    if (!area.inFrame || !old || wantedIds.has(area.id)) return []
    const stops = (area.meter.stops ?? -16) - (old.meter.stops ?? -16)
    if (Math.abs(stops) >= WORTH_TELLING_STOPS) return [{ words: `${area.label} ${formatStops(stops)}`, weight: Math.min(Math.abs(stops), 2) }]
    const difference = colourDifference2000(area.colour.xyz, old.colour.xyz)
    return difference <= 2 * COLOUR_TOLERANCE ? [] : [{ words: `${area.label} turns from ${old.colour.words} to ${area.colour.words}`, weight: difference / 20 }]
  }).filter(({ words }) => !/turns from (.+) to \1$/.test(words))
  return found.sort((a, b) => b.weight - a.weight).slice(0, MOST_AREAS_TOLD)
}

function letterOf({ lights }: Prediction, lightId: string): string {
  return lights.find(({ id }) => id === lightId)?.letter ?? lightId
}
