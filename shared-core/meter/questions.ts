import { incidentFNumber, incidentLuxSeconds } from '../exposure/meter.ts'
import { timesFromStops } from '../arithmetic/portable.ts'
import type { Light, Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { lightsInSetUpOrder } from '../predict/sceneOfLook.ts'
import type { Site } from '../predict/sites.ts'
import { receptorConstant, takingOf } from '../predict/taking.ts'
import type { FiredPart, Reading } from '../rig/readings.ts'
import { learnedInPlan, luxSecondsWith, meterModel, stopsOfLuxSeconds, type ExpectedLight, type Held, type MeterModel } from './expected.ts'
import type { Learned } from './learn.ts'

/** One reading to take. */
export interface Question extends Held {
  readonly id: string
  readonly lookId: string
  /** One light alone, or all that are on together. */
  readonly fires: 'alone' | 'together'
  /** In set-up order. */
  readonly lightIds: readonly string[]
  readonly letters: readonly string[]
  readonly areaLabel: string
  /** What the meter should show, as an exact f-number: what is wanted there, or else what is predicted now. */
  readonly plannedFNumber: number
  /** Whether somebody said what is wanted there. */
  readonly isWanted: boolean
  /** What it is predicted to show now, with all that was learned. */
  readonly predictedFNumber: number
  readonly plusMinusStops: number
  /** To be taken; to be taken again because the last does not fit or the set has moved since; taken; or sure enough without. */
  readonly state: 'ask' | 'again' | 'taken' | 'sure'
  readonly lastKey: string | null
  /** The facts that a reading taken now is made under. */
  readonly expected: ExpectedLight
}

/** Surer than this needs no reading: a quarter stop. After one reading a light is to be known to a fifth. */
export const SURE_ENOUGH_STOPS = 0.25
/** A place whose light has moved by less than a meter can show has not moved. */
const UNMOVED_STOPS = 0.05

/**
 * The readings of a look in the order to take them: one light at a time, gelled background lights first while all else
 * is off, then in set-up order; at last all together where the key falls and wherever else that is not sure
 * (common practice, no source). Lights that are off are not asked for.
 * @throws RangeError when the plan has no such look
 */
export function questionsOf(plan: Plan, lookId: string, learned: Learned): readonly Question[] {
  const model = meterModel(plan, lookId)
  const look = plan.looks[lookId]!
  const asker = { plan, look, lookId, model, learned }
  const lights = lightsInSetUpOrder(look).filter(([, light]) => light.on && plan.heads[light.headId] && plan.modifiers[light.modifierId])
  const gelledBehind = lights.filter(([, light]) => isGelledBehind(light))
  const others = lights.filter(([, light]) => !isGelledBehind(light))
  const alone = [...gelledBehind, ...others].flatMap(([id, light]) => aloneQuestion(asker, id, light))
  return [...alone, ...(lights.length > 1 ? togetherQuestions(asker, lights) : [])]
}

interface Asker {
  readonly plan: Plan
  readonly look: Look
  readonly lookId: string
  readonly model: MeterModel
  readonly learned: Learned
}

function isGelledBehind({ plane, gelIds }: Light): boolean {
  return plane === 'background' && gelIds.length > 0
}

function aloneQuestion(asker: Asker, lightId: string, light: Light): Question[] {
  const { look, lookId, model } = asker
  const site = model.sites.find(({ id }) => id === light.serves) ?? model.sites[0]!
  const held = heldAlone(site, look)
  const expected = model.expect(held)
  const part = expected?.parts.find((one) => one.lightId === lightId)
  if (!expected || !part) return []
  const question = { ...held, id: `${lookId}.alone.${lightId}`, fires: 'alone' as const, lightIds: [lightId], letters: [light.letter] }
  return [whole(asker, question, { ...expected, parts: [part] }, light.wantedStops)]
}

/** A lit cloth is read with a flat disc held against it: what comes through it, and nothing else. */
function heldAlone(site: Site, look: Look): Held {
  return site.shines ? { areaId: site.id, receptor: 'flat', pointed: 'cloth' } : { areaId: site.id, receptor: look.meter.receptor, pointed: 'light' }
}

/** Where the key falls is read whatever is known: it says that nothing was forgotten. Elsewhere only what is not sure. */
function togetherQuestions(asker: Asker, lights: readonly (readonly [string, Light])[]): Question[] {
  const { look, lookId, model } = asker
  const front = lights.filter(([, { plane }]) => plane === 'front')
  const ordered = [...front, ...lights.filter(([, { plane }]) => plane !== 'front')]
  const areaIds = [...new Set(ordered.map(([, { serves }]) => serves))]
  return areaIds.flatMap((areaId, i): Question[] => {
    const site = model.sites.find(({ id }) => id === areaId)
    if (!site || site.shines) return []
    const held: Held = { areaId, receptor: look.meter.receptor, pointed: 'camera' }
    const expected = model.expect(held)
    if (!expected) return []
    const fired = { lightIds: expected.parts.map(({ lightId }) => lightId), letters: expected.parts.map(({ letter }) => letter) }
    const question = whole(asker, { ...held, id: `${lookId}.together.${areaId}`, fires: 'together', ...fired }, expected, null)
    return [i === 0 && question.state === 'sure' ? { ...question, state: 'ask' } : question]
  })
}

function whole(
  { plan, look, lookId, learned }: Asker, question: Pick<Question, 'id' | 'areaId' | 'receptor' | 'pointed' | 'fires' | 'lightIds' | 'letters'>,
  expected: ExpectedLight, wantedStops: number | null,
): Question {
  const { isoSpeed, constant, ambientLuxSeconds, parts } = expected
  const predicted = luxSecondsWith({ fired: parts, ambientLuxSeconds }, learnedInPlan(plan))
  // What is wanted counts as the board counts it: for the dome, whatever disc it is then read with.
  const unit = incidentLuxSeconds(takingOf(look.camera).fNumber, isoSpeed, receptorConstant(look.meter, 'dome'))
  const planned = wantedStops === null ? predicted : unit * timesFromStops(wantedStops)
  const plusMinusStops = learned.plusMinusOf(lookId, parts, ambientLuxSeconds)
  const last = lastReading(learned, lookId, question)
  return {
    ...question,
    lookId,
    areaLabel: expected.areaLabel,
    plannedFNumber: incidentFNumber(planned, isoSpeed, constant),
    isWanted: wantedStops !== null,
    predictedFNumber: incidentFNumber(predicted, isoSpeed, constant),
    plusMinusStops,
    state: stateOf(last, expected, plusMinusStops),
    lastKey: last?.key ?? null,
    expected,
  }
}

function lastReading(learned: Learned, lookId: string, question: Held & Pick<Question, 'lightIds'>): Learned['readings'][number] | null {
  const same = learned.readings.filter(({ state, reading }) => state !== 'withdrawn' && reading.lookId === lookId && isSameHold(reading, question))
  return same.reduce<Learned['readings'][number] | null>((last, one) => (last === null || one.reading.by.atMs >= last.reading.by.atMs ? one : last), null)
}

function isSameHold(reading: Reading, { areaId, receptor, pointed, lightIds }: Held & Pick<Question, 'lightIds'>): boolean {
  return reading.areaId === areaId && reading.receptor === receptor && reading.pointed === pointed
    && reading.fired.length === lightIds.length && reading.fired.every(({ lightId }) => lightIds.includes(lightId))
}

function stateOf(last: Learned['readings'][number] | null, expected: ExpectedLight, plusMinusStops: number): Question['state'] {
  const isSure = plusMinusStops <= SURE_ENOUGH_STOPS
  if (last === null) return isSure ? 'sure' : 'ask'
  if (last.state === 'held-back') return 'again'
  return isSure || isUnmoved(last.reading, expected) ? 'taken' : 'again'
}

/** Power apart: a head turned up gives more by as much, which needs no reading. */
function isUnmoved(reading: Reading, expected: ExpectedLight): boolean {
  const perJoule = ({ luxSeconds, energyJoules }: FiredPart) => stopsOfLuxSeconds(luxSeconds / energyJoules)
  return reading.fired.every((part) => {
    const now = expected.parts.find(({ lightId }) => lightId === part.lightId)
    return now !== undefined && Math.abs(perJoule(now) - perJoule(part)) < UNMOVED_STOPS
  })
}
