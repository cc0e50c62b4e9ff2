import type { Light, Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Prediction } from '../predict/prediction.ts'
import type { Predictor } from '../predict/predict.ts'
import { areaLightOf, withLightTimes, type AreaLight } from './areaLight.ts'

export type SlipKind =
  | 'nothing' | 'power' | 'not-fired' | 'gel-missing' | 'gel-doubled' | 'gels-swapped' | 'powers-swapped' | 'places-swapped'
  | 'grid-missing' | 'other-side' | 'exposure' | 'white-balance'

/** One thing that may be otherwise than planned, and the light the areas would get then. */
export interface Slip {
  readonly key: string
  readonly kind: SlipKind
  readonly lightIds: readonly string[]
  /** "C's violet gel is missing"; `#` stands for what is fitted: stops, or kelvin. */
  readonly words: string
  /** "Look at C's gel first." */
  readonly action: string
  readonly light: AreaLight
}

/**
 * How often each slip is made somewhere in a set, against a set that is as planned (common practice, no source): what is
 * turned at every light most often, what takes carrying a stand to the wrong side least.
 */
export const SLIP_OFTEN: Readonly<Record<SlipKind, number>> = {
  nothing: 1, power: 0.1, 'not-fired': 0.03, 'gel-missing': 0.05, 'gel-doubled': 0.01, 'gels-swapped': 0.02, 'powers-swapped': 0.02,
  'places-swapped': 0.005, 'grid-missing': 0.02, 'other-side': 0.005, exposure: 0.05, 'white-balance': 0.03,
}

/**
 * Every single slip of a look, each tried in the model. A generator, so that whoever works it out beside a page can stop
 * between two: each step is one prediction.
 */
export function* slipsOf(
  predictor: Predictor, plan: Plan, lookId: string, base: Prediction, areaIds: readonly string[], lightIds: readonly string[],
): Generator<Slip> {
  const look = plan.looks[lookId]!
  const asPlanned = areaLightOf(base, areaIds, lightIds)
  const lightOf = (lights: Readonly<Record<string, Partial<Light>>>): AreaLight =>
    areaLightOf(predictor(withLights(plan, lookId, look, lights), lookId), areaIds, lightIds, asPlanned)
  const same = (kind: SlipKind, words: string, action: string): Slip => ({ key: kind, kind, lightIds: [], words, action, light: asPlanned })

  yield same('nothing', 'everything agrees', '')
  yield same('exposure', 'the whole frame is #', 'Look at aperture, ISO and any filter on the lens first.')
  yield same('white-balance', 'white balance is set otherwise, about #', 'Look at the camera\'s white balance first.')

  for (const [l, id] of lightIds.entries()) {
    const light = look.lights[id]!
    const one = (kind: SlipKind, detail: string, words: string, action: string, lit: AreaLight): Slip =>
      ({ key: `${kind}:${id}${detail}`, kind, lightIds: [id], words, action, light: lit })
    const { letter } = light
    yield one('power', '', `${letter} is #`, `Look at ${letter}'s power first.`, asPlanned)
    yield one('not-fired', '', `${letter} did not fire`, `Look at ${letter}'s plug, sync and channel first.`, withLightTimes(asPlanned, l, lightIds.length, 0))
    const nameOf = (gelId: string) => (plan.gels[gelId]?.name ?? 'its').toLowerCase()
    for (const [i, gelId] of light.gelIds.entries()) {
      if (light.gelIds.indexOf(gelId) !== i) continue
      const words = light.gelIds.length > 1 ? `one sheet of ${letter}'s gel is missing, ${nameOf(gelId)}` : `${letter}'s ${nameOf(gelId)} gel is missing`
      yield one('gel-missing', `:${gelId}`, words, `Look at ${letter}'s gel first.`, lightOf({ [id]: { gelIds: light.gelIds.filter((_, k) => k !== i) } }))
      if (light.gelIds.length < 4) {
        yield one('gel-doubled', `:${gelId}`, `${letter} has ${nameOf(gelId)} twice`, `Look at ${letter}'s gel first.`, lightOf({ [id]: { gelIds: [...light.gelIds, gelId] } }))
      }
    }
    if (light.gelIds.length > 1) {
      yield one('gel-missing', ':all', `${letter} has no gel at all`, `Look at ${letter}'s gel first.`, lightOf({ [id]: { gelIds: [] } }))
    }
    if (light.grid.kind !== 'none') {
      yield one('grid-missing', '', `${letter}'s grid is missing`, `Look at ${letter}'s grid first.`, lightOf({ [id]: { grid: { ...light.grid, kind: 'none' } } }))
    }
    if (Math.abs(light.place.xMetres - look.subject.xMetres) > LEAST_SIDE_METRES) {
      yield one('other-side', '', `${letter} stands on the other side`, `Look at where ${letter} stands first.`, lightOf({ [id]: mirrored(light, look.subject.xMetres) }))
    }
  }
  for (const [i, first] of lightIds.entries()) {
    for (const second of lightIds.slice(i + 1)) yield* swapsOf(look, first, second, lightOf)
  }
}

/** Nearer to the middle than this a light has no other side. */
const LEAST_SIDE_METRES = 0.3

function* swapsOf(look: Look, first: string, second: string, lightOf: (lights: Readonly<Record<string, Partial<Light>>>) => AreaLight): Generator<Slip> {
  const [one, other] = [look.lights[first]!, look.lights[second]!]
  const both = `${one.letter} and ${other.letter}`
  const swap = (kind: SlipKind, words: string, action: string, of: (from: Light) => Partial<Light>): Slip => ({
    key: `${kind}:${first}:${second}`, kind, lightIds: [first, second], words, action, light: lightOf({ [first]: of(other), [second]: of(one) }),
  })
  if (one.gelIds.join() !== other.gelIds.join()) {
    yield swap('gels-swapped', `${both} have each other's gels`, `Look at the gels of ${both} first.`, ({ gelIds }) => ({ gelIds }))
  }
  if (one.energyJoules !== other.energyJoules) {
    yield swap('powers-swapped', `${both} have each other's power`, `Look at the powers and channels of ${both} first.`, ({ energyJoules }) => ({ energyJoules }))
  }
  yield swap('places-swapped', `${both} stand in each other's places`, `Look at the letters on the stands of ${both} first.`, ({ place, aim }) => ({ place, aim }))
}

function mirrored({ place, aim, rollDegrees }: Light, middleMetres: number): Partial<Light> {
  const across = (from: Light['place']): Light['place'] => ({ ...from, xMetres: 2 * middleMetres - from.xMetres })
  return { place: across(place), aim: across(aim), rollDegrees: -rollDegrees }
}

function withLights(plan: Plan, lookId: string, look: Look, changed: Readonly<Record<string, Partial<Light>>>): Plan {
  const lights = { ...look.lights }
  for (const [id, change] of Object.entries(changed)) lights[id] = { ...look.lights[id]!, ...change }
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, lights } } }
}
