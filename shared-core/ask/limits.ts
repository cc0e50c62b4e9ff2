import { stopsFromTimes } from '../arithmetic/portable.ts'
import { stopsInWords } from '../plan/entry/stops.ts'
import type { Prediction } from '../predict/prediction.ts'
import type { Snag } from '../predict/snag.ts'
import type { Aim } from './aim.ts'
import type { Limit } from './answer.ts'
import { lightOf, lookOf, type Draft } from './draft.ts'
import { sheetsLacking, shortfallOf } from './judge.ts'
import { modelOf } from './modelOf.ts'
import { solvePowers, type PowerSolution } from './powers.ts'
import type { Task } from './task.ts'
import { areaName, gelNames } from './wantWords.ts'

/** Past an end of a head's range by less than this is rounding. */
const PAST_STOPS = 0.02
const AS_GOOD_AS_MET_STOPS = 0.01

/** A light that would have to be set past its head's range, and by how much. */
export interface Excess {
  readonly lightId: string
  /** Positive: more than full; negative: less than the lowest. */
  readonly stops: number
}

/** What the powers run into, found by solving without ends to the heads' ranges. */
export interface PowerLimit {
  readonly limit: Limit
  /** Lights past their range when nothing else stands in the way; worst first. */
  readonly excesses: readonly Excess[]
}

/** Why powers alone do not give what is wanted. */
export function powerLimit(task: Task, draft: Draft): PowerLimit {
  const free = solvePowers(task, draft, 'anything')
  const excesses = excessesOf(free.draft)
  const worst = excesses[0]
  // Only what would do once it is lifted is the limit; else something stands in the way of any power.
  if (worst && free.shortfall < AS_GOOD_AS_MET_STOPS) return { limit: rangeLimit(draft, worst), excesses }
  return { limit: otherLimit(task, free), excesses: [] }
}

/** Lights of a draft past their head's range, worst first. */
export function excessesOf(draft: Draft): Excess[] {
  return Object.entries(lookOf(draft).lights).flatMap(([lightId, light]): Excess[] => {
    const head = draft.plan.heads[light.headId]
    if (!light.on || !head) return []
    const over = stopsFromTimes(light.energyJoules / head.fullEnergyJoules)
    const under = stopsFromTimes(light.energyJoules / head.lowestEnergyJoules)
    if (over > PAST_STOPS) return [{ lightId, stops: over }]
    return under < -PAST_STOPS ? [{ lightId, stops: under }] : []
  }).sort((a, b) => Math.abs(b.stops) - Math.abs(a.stops))
}

function rangeLimit(draft: Draft, { lightId, stops }: Excess): Limit {
  const { letter } = lightOf(draft, lightId)
  const by = stopsInWords(stops)
  return stops > 0
    ? { kind: 'power', aboutId: lightId, byStops: stops, words: `${letter} is out of power by ${by}` }
    : { kind: 'lowest-power', aboutId: lightId, byStops: -stops, words: `${letter} is ${by} too strong at its lowest power` }
}

/** What is still in the way when powers could be anything: named from the want that lies farthest off. */
function otherLimit(task: Task, { draft, prediction, outcomes }: PowerSolution): Limit {
  const worst = task.aims.reduce((far, _, i) =>
    (shortfallOf(task.aims[i]!, outcomes[i]!.miss, draft) > shortfallOf(task.aims[far]!, outcomes[far]!.miss, draft) ? i : far), 0)
  const aim = task.aims[worst]!
  const miss = outcomes[worst]!.miss
  const { want } = aim
  switch (want.kind) {
    case 'white-behind': return whiteLimit(draft, miss)
    case 'area-colour':
      return { kind: 'gel', aboutId: aim.lightId, byStops: null, words: `With the sheets in place the ${areaName(want.areaId, lookOf(draft))} stays ${miss.toFixed(1)} from the colour wanted` }
    case 'area-gel': return gelLimit(aim, want.gelIds, draft) ?? levelLimit(aim, miss, draft, prediction)
    case 'light-level': {
      const light = lookOf(draft).lights[want.lightId]
      if (light && !light.on) return { kind: 'kit', aboutId: want.lightId, byStops: null, words: `${light.letter} is switched off, and stays so` }
      return levelLimit(aim, miss, draft, prediction)
    }
    default: return levelLimit(aim, miss, draft, prediction)
  }
}

function whiteLimit(draft: Draft, miss: number): Limit {
  const isAnyBehind = Object.values(lookOf(draft).lights).some((light) => light.on && light.plane === 'background')
  return isAnyBehind
    ? { kind: 'gel', aboutId: null, byStops: miss, words: 'No power of the lights behind makes every corner white with these sheets' }
    : { kind: 'kit', aboutId: null, byStops: miss, words: 'No light that is on is set for the background' }
}

function gelLimit({ lightId }: Aim, gelIds: readonly string[], draft: Draft): Limit | null {
  if (lightId === null) return null
  const lacking = sheetsLacking(gelIds, draft)
  if (lacking === 0) return null
  return { kind: 'kit', aboutId: gelIds[0] ?? null, byStops: null, words: `The drawer lacks ${lacking} ${lacking === 1 ? 'sheet' : 'sheets'} of ${gelNames(gelIds, draft.plan)}` }
}

/** A level that no power of its own light brings about: too bright by others, or too dark for want of any. */
function levelLimit({ want, lightId }: Aim, miss: number, draft: Draft, prediction: Prediction): Limit {
  const look = lookOf(draft)
  const model = modelOf(prediction, look.meter)
  const areaId = 'areaId' in want ? want.areaId : look.lights[lightId ?? '']?.serves ?? ''
  const name = areaName(areaId, look)
  if (lightId === null && model.strongestAt(areaId) === null) {
    return { kind: 'kit', aboutId: null, byStops: null, words: `No light that is on reaches the ${name}` }
  }
  const isTruth = want.kind === 'reads-true'
  const other = isTruth ? lightId : model.strongestAt(areaId, (id) => id !== lightId) ?? lightId
  const letter = other === null ? 'The room' : look.lights[other]?.letter ?? ''
  const by = Math.abs(miss)
  const words = isTruth ? `${letter} colours the ${name}: ${stopsInWords(by)} from clear light`
    : miss > 0 ? `${letter} alone keeps the ${name} ${stopsInWords(by)} too bright`
      : `What else is wanted keeps the ${name} ${stopsInWords(by)} too dark`
  return { kind: 'other-lights', aboutId: other, byStops: by, words }
}

/** What keeps a piece or light from standing where it would have to, if the snag is of that sort. */
export function placeLimit({ rule, message, about }: Snag): Limit | null {
  const aboutId = about[0] ?? null
  const limit = (kind: Limit['kind']): Limit => ({ kind, aboutId, byStops: null, words: message })
  switch (rule) {
    case 'outside-room': return limit(message.includes('ceiling') ? 'ceiling' : 'room')
    case 'in-frame': return limit('frame')
    case 'head-near-face': return limit('near-face')
    default: return null
  }
}
