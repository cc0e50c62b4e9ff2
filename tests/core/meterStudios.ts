import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Light } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { fullAndTenths } from '../../shared-core/exposure/aperture.ts'
import { exactFNumber } from './meterTaking.ts'
import { randomOf } from './random.ts'

/**
 * A studio whose kit differs from its papers by amounts that the book is not told: what makes of head differ by
 * (±0.7 stop), what all together differ by (±2/3 stop), a tenth of what a dense sheet loses. All common practice, no
 * source; ± taken as two standard deviations. One unit differs from the next by less than a tenth.
 */
export interface Studio {
  readonly plan: Plan
  readonly next: Plan
  /** Level of each light of a plan of this studio as it really is, as an exact f-number. */
  trueLevels(plan: Plan): ReadonlyMap<string, number>
  /** Level of each light as a plan predicts it, as an exact f-number. */
  levels(plan: Plan): ReadonlyMap<string, number>
  /** As the meter shows it: off by up to a twentieth, in tenths. */
  shown(fNumber: number): number
}

const MODIFIERS = ['octa-100', 'strip-35x140', 'umbrella-165', 'reflector-65', 'softbox-90x120', 'dish-55', 'umbrella-105'] as const
/** Sheets, with what a meter loses through each family (common practice, no source). */
const GEL_LOSSES = { apricot: 0.7, violet: 3, moss: 1.3, pistachio: 0.25, amber: 0.8, rose: 1.9, sky: 1, lavender: 1.2 } as const
const GELS = Object.keys(GEL_LOSSES)
const LETTERS = ['A', 'B', 'C', 'D', 'E'] as const

export function studioOf(start: number, nextCarries: 'a modifier that was read' | 'a new modifier'): Studio {
  const random = randomOf(start)
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!
  const normal = (deviation: number) => deviation * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const modifiers = [...MODIFIERS].sort(() => random() - 0.5)
  const look = demoPlan.looks['dusk']!
  const places = Object.values(look.lights)
  const lights = places.map((place, i): Light => ({
    ...place, letter: LETTERS[i]!, headId: pick(['head-1000', 'head-1000', 'old-head-1000']), modifierId: modifiers[i]!,
    grid: { kind: 'none', openingDegrees: 40 }, gelIds: random() < 0.6 ? [pick(GELS)] : [], energyJoules: 60 + 400 * random(), wantedStops: null,
  }))
  const known = pick(lights)
  const fresh: Light = {
    ...known, letter: 'E', setUpOrder: 9, gelIds: [pick(GELS)], serves: 'shoulder-left', energyJoules: 120,
    place: { xMetres: -1.4, yMetres: 0.3, zMetres: 1.8 }, aim: { xMetres: -0.1, yMetres: 0, zMetres: 1.4 },
    modifierId: nextCarries === 'a modifier that was read' ? known.modifierId : modifiers[4]!,
  }
  const withLights = (list: readonly Light[]): Plan => ({
    ...demoPlan, looks: { dusk: { ...look, pieces: {}, lights: Object.fromEntries(list.map((light) => [light.letter.toLowerCase(), light])) } },
  })
  const plan = withLights(lights)
  const hidden = {
    heads: mapped(plan.heads, () => normal(0.35)),
    modifiers: mapped(plan.modifiers, () => normal(0.22)),
    gels: mapped(plan.gels, (_, id) => normal(0.05 * (id in GEL_LOSSES ? GEL_LOSSES[id as keyof typeof GEL_LOSSES] : 1))),
  }
  const predict = createPredictor()
  const levels = (of: Plan) => new Map(predict(of, 'dusk').lights.map(({ letter, level }) => [letter, level.fNumber]))
  const unitOff = new Map(LETTERS.map((letter) => [letter as string, normal(0.04)]))
  return {
    plan,
    levels,
    next: withLights([...lights, fresh]),
    trueLevels(of) {
      const real: Plan = {
        ...of,
        heads: mapped(of.heads, (head, id) => ({ ...head, learnedStops: hidden.heads[id]! })),
        modifiers: mapped(of.modifiers, (modifier, id) => ({ ...modifier, learnedStops: hidden.modifiers[id]! })),
        gels: mapped(of.gels, (gel, id) => ({ ...gel, learnedStops: hidden.gels[id]! })),
      }
      return new Map([...levels(real)].map(([letter, fNumber]) => [letter, fNumber * 2 ** (unitOff.get(letter)! / 2)]))
    },
    shown(fNumber) {
      const { fullFNumber, tenths } = fullAndTenths(fNumber * 2 ** ((random() - 0.5) * 0.1 / 2))
      return exactFNumber(fullFNumber, tenths)
    },
  }
}

function mapped<T, R>(record: Readonly<Record<string, T>>, change: (value: T, id: string) => R): Record<string, R> {
  return Object.fromEntries(Object.entries(record).map(([id, value]) => [id, change(value, id)]))
}
