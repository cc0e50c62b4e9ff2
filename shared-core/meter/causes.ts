import { fullAndTenths } from '../exposure/aperture.ts'
import type { Light } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { FiredPart, Reading } from '../rig/readings.ts'
import { luxSecondsWith, meterModel, stopsOfLuxSeconds, type ExpectedLight, type Held } from './expected.ts'
import type { Judged, Learned } from './learn.ts'

/** Why a reading may be as it is. */
export interface Cause {
  readonly kind:
    | 'this-head' | 'gel-missing' | 'gel-doubled' | 'diffuser-missing' | 'grid-missing' | 'power-step' | 'others-on'
    | 'not-fired' | 'receptor' | 'pointed' | 'scale' | 'meter-iso'
  /** "C without its violet gel" */
  readonly words: string
  /** By how many stops it would lift (positive) the reading. */
  readonly stops: number
  /** How likely among all causes tried, 0-1. */
  readonly likelihood: number
}

/**
 * How often each slip is made, in whichever way, against a set that is as planned (common practice, no source): what is
 * turned at every light most often, what takes a hand inside a box least.
 */
const SLIPS: Readonly<Record<Exclude<Cause['kind'], 'this-head'>, number>> = {
  'gel-missing': 0.03, 'gel-doubled': 0.01, 'diffuser-missing': 0.02, 'grid-missing': 0.02, 'power-step': 0.06, 'others-on': 0.03,
  'not-fired': 0.03, receptor: 0.03, pointed: 0.02, scale: 0.01, 'meter-iso': 0.01,
}

type Tried = Omit<Cause, 'likelihood'>

/**
 * The likeliest causes of a reading first, each tried in the model: what the meter would show then, against what it
 * does show, weighed by how sure the expectation is and how often the slip is made (Bayes' rule). "It is simply this
 * head" is among them.
 */
export function causesOf(plan: Plan, learned: Learned, { reading, surpriseStops, deviationStops }: Judged): readonly Cause[] {
  const slips = slipsOf(plan, learned, reading)
  const tried: readonly (readonly [Tried, number])[] = [
    [{ kind: 'this-head', words: simplyWords(reading), stops: 0 }, 1],
    ...slips.map((slip) => [slip, SLIPS[slip.kind as keyof typeof SLIPS] / slips.filter(({ kind }) => kind === slip.kind).length] as const),
  ]
  const logs = tried.map(([{ stops }, often]) => {
    const off = (surpriseStops - stops) / deviationStops
    return Math.log(often) - (off * off) / 2
  })
  const most = Math.max(...logs)
  const whole = logs.reduce((sum, log) => sum + Math.exp(log - most), 0)
  return tried.map(([one], i): Cause => ({ ...one, likelihood: Math.exp(logs[i]! - most) / whole }))
    .sort((a, b) => b.likelihood - a.likelihood)
}

function simplyWords({ fired }: Reading): string {
  return fired.length === 1 ? `it is simply this head: ${fired[0]!.letter} gives what it reads` : 'the set is simply so'
}

function slipsOf(plan: Plan, learned: Learned, reading: Reading): readonly Tried[] {
  const look = Object.hasOwn(plan.looks, reading.lookId) ? plan.looks[reading.lookId] : undefined
  if (!look) return scaleSlips(reading)
  const set = setOf(plan, learned, reading)
  if (set === null) return scaleSlips(reading)
  const perLight = reading.fired.flatMap(({ lightId }) => {
    const light = look.lights[lightId]
    return light ? lightSlips(plan, set, lightId, light) : []
  })
  const slips = [...perLight, ...(reading.fired.length === 1 ? othersOn(set) : notFired(set)), ...heldOtherwise(set), ...scaleSlips(reading)]
  return slips.filter(({ stops }) => Math.abs(stops) > LEAST_TOLD_STOPS)
}

/** A slip that changes less than a meter shows is no cause. */
const LEAST_TOLD_STOPS = 0.08

/** A reading and its look in the model, as the plan has it now. */
interface MeteredSet {
  readonly plan: Plan
  readonly reading: Reading
  readonly learned: Learned
  readonly now: ExpectedLight
}

function setOf(plan: Plan, learned: Learned, reading: Reading): MeteredSet | null {
  const now = meterModel(plan, reading.lookId).expect(reading)
  return now === null ? null : { plan, reading, learned, now }
}

/** Stops that an expectation lies over another for the lights that fired, each corrected as learned. */
function stopsOverNow({ reading, learned, now }: MeteredSet, then: Pick<ExpectedLight, 'parts' | 'ambientLuxSeconds'>, lightIds = firedIds(reading)): number {
  const sum = ({ parts, ambientLuxSeconds }: Pick<ExpectedLight, 'parts' | 'ambientLuxSeconds'>, ids: readonly string[]) =>
    stopsOfLuxSeconds(luxSecondsWith({ fired: parts.filter(({ lightId }) => ids.includes(lightId)), ambientLuxSeconds }, (part) => corrected(learned, reading, part)))
  return sum(then, lightIds) - sum(now, firedIds(reading))
}

/** A swapped gel or diffuser keeps what was learned of the light as it was planned: only the light itself changes. */
function corrected(learned: Learned, reading: Reading, part: FiredPart): number {
  const asPlanned = reading.fired.find(({ lightId }) => lightId === part.lightId)
  return learned.correctionOf(reading.lookId, asPlanned ?? part)
}

function firedIds({ fired }: Reading): readonly string[] {
  return fired.map(({ lightId }) => lightId)
}

function lightSlips(plan: Plan, set: MeteredSet, lightId: string, light: Light): Tried[] {
  const { letter, gelIds, energyJoules } = light
  const withLight = (changed: Partial<Light>, kit: Partial<Plan> = {}): number => {
    const { looks } = plan
    const look = looks[set.reading.lookId]!
    const other = { ...plan, ...kit, looks: { ...looks, [set.reading.lookId]: { ...look, lights: { ...look.lights, [lightId]: { ...light, ...changed } } } } }
    const then = meterModel(other, set.reading.lookId).expect(set.reading, firedIds(set.reading))
    return then === null ? 0 : stopsOverNow(set, then)
  }
  const slips: Tried[] = []
  const gelName = (id: string) => (plan.gels[id]?.name ?? 'its').toLowerCase()
  gelIds.forEach((id, i) => {
    slips.push({ kind: 'gel-missing', words: `${letter} without its ${gelName(id)} gel`, stops: withLight({ gelIds: gelIds.filter((_, k) => k !== i) }) })
  })
  for (const id of new Set(gelIds)) {
    if (gelIds.length < 4) slips.push({ kind: 'gel-doubled', words: `${letter} with ${gelName(id)} twice`, stops: withLight({ gelIds: [...gelIds, id] }) })
  }
  const modifier = plan.modifiers[light.modifierId]
  if (modifier && modifier.diffusers > 0) {
    const thinner = { ...modifier, diffusers: modifier.diffusers - 1 }
    const which = modifier.diffusers > 1 ? 'inner diffuser' : 'diffuser'
    slips.push({
      kind: 'diffuser-missing', words: `${letter} without its ${which}`,
      stops: withLight({ modifierId: light.modifierId }, { modifiers: { ...plan.modifiers, [light.modifierId]: thinner } }),
    })
  }
  if (light.grid.kind !== 'none') slips.push({ kind: 'grid-missing', words: `${letter} without its grid`, stops: withLight({ grid: { ...light.grid, kind: 'none' } }) })
  slips.push({ kind: 'power-step', words: `${letter} a stop too high: its power a step off`, stops: withLight({ energyJoules: energyJoules * 2 }) })
  slips.push({ kind: 'power-step', words: `${letter} a stop too low: its power a step off`, stops: withLight({ energyJoules: energyJoules / 2 }) })
  return slips
}

function othersOn(set: MeteredSet): Tried[] {
  const { now, reading } = set
  const own = firedIds(reading)
  const others = now.parts.filter(({ lightId }) => !own.includes(lightId))
  const withOthers = (parts: readonly FiredPart[]) => stopsOverNow(set, now, [...own, ...parts.map(({ lightId }) => lightId)])
  const single = others.map((part): Tried => ({ kind: 'others-on', words: `${part.letter} was on too`, stops: withOthers([part]) }))
  if (others.length < 2) return single
  return [...single, { kind: 'others-on', words: 'all lights were on', stops: withOthers(others) }]
}

function notFired(set: MeteredSet): Tried[] {
  const own = firedIds(set.reading)
  return set.reading.fired.map(({ lightId, letter }): Tried => ({
    kind: 'not-fired', words: `${letter} did not fire`, stops: stopsOverNow(set, set.now, own.filter((id) => id !== lightId)),
  }))
}

/** The same light met by a meter held otherwise shows another number, by its constant too. */
function heldOtherwise(set: MeteredSet): Tried[] {
  const { plan, reading, now } = set
  const model = meterModel(plan, reading.lookId)
  const stopsHeld = (held: Held): number => {
    const then = model.expect(held, firedIds(reading))
    return then === null ? 0 : stopsOverNow(set, then) - stopsOfLuxSeconds(then.constant) + stopsOfLuxSeconds(now.constant)
  }
  const { areaId, receptor, pointed } = reading
  if (pointed === 'cloth') return []
  const otherReceptor = receptor === 'dome' ? 'flat' : 'dome'
  const otherWay = pointed === 'light' ? 'camera' : 'light'
  const tried: Tried[] = [{ kind: 'receptor', words: `read with the ${otherReceptor === 'flat' ? 'flat disc' : 'dome'} instead of the ${receptor === 'flat' ? 'flat disc' : 'dome'}`, stops: stopsHeld({ areaId, receptor: otherReceptor, pointed }) }]
  if (reading.fired.length === 1) tried.push({ kind: 'pointed', words: `pointed at the ${otherWay} instead of the ${pointed}`, stops: stopsHeld({ areaId, receptor, pointed: otherWay }) })
  return tried
}

/** The figure taken on another scale, or a meter that is set to another speed. */
function scaleSlips({ fNumber, isoSpeed }: Reading): Tried[] {
  const { tenths } = fullAndTenths(fNumber)
  const slips: Tried[] = [
    { kind: 'meter-iso', words: `the meter stands at ISO ${2 * isoSpeed} instead of ${isoSpeed}`, stops: 1 },
    { kind: 'meter-iso', words: `the meter stands at ISO ${isoSpeed / 2} instead of ${isoSpeed}`, stops: -1 },
  ]
  // A meter that counts thirds shows 1 and 2.
  if (tenths === 1 || tenths === 2) slips.push({ kind: 'scale', words: `the meter counts thirds of a stop, not tenths`, stops: tenths / 10 - tenths / 3 })
  return slips
}
