import { changed, draftOf, lightOf, type Draft } from '../../shared-core/ask/draft.ts'
import { energyChange } from '../../shared-core/ask/lightChanges.ts'
import { chosen } from '../../shared-core/ask/ways/colourChoices.ts'
import type { Want } from '../../shared-core/ask/want.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { fitToHead } from '../../shared-core/plan/fitToHead.ts'
import type { Light, Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'

/** The demo job with another light, head, room or anything else of one look. */
export function withLook(lookId: string, change: (look: Look) => Look, plan: Plan = demoPlan): Plan {
  return { ...plan, looks: { ...plan.looks, [lookId]: change(plan.looks[lookId]!) } }
}

export function withLight(lookId: string, lightId: string, change: Partial<Light>, plan: Plan = demoPlan): Plan {
  return withLook(lookId, (look) => ({ ...look, lights: { ...look.lights, [lightId]: { ...look.lights[lightId]!, ...change } } }), plan)
}

const SHEETS: readonly (readonly string[])[] = [
  [], ['apricot'], ['violet'], ['moss'], ['straw'], ['amber'], ['pale-pink'], ['lavender'], ['blue'], ['turquoise'], ['pistachio'],
]
/** Size for size: what may take another's place without leaving the room. */
const INSTEAD: Readonly<Record<string, readonly string[]>> = {
  'octa-100': ['octa-100', 'softbox-90x120', 'dish-55'],
  'strip-35x140': ['strip-35x140'],
  'umbrella-165': ['umbrella-165', 'umbrella-105', 'shoot-through-110'],
  'reflector-65': ['reflector-65'],
}

const pick = <Value>(random: () => number, values: readonly Value[]): Value => values[Math.floor(random() * values.length)]!

/** Powers anywhere on the steps of each head, within its range. */
export function withRandomPowers(draft: Draft, random: () => number): Draft {
  const { lights } = draft.plan.looks[draft.lookId]!
  return changed(draft, Object.entries(lights).map(([id, light]) => {
    const head = draft.plan.heads[light.headId]!
    return energyChange(draft.lookId, id, fitToHead(head, head.fullEnergyJoules * 2 ** (-8 * random())))
  }))
}

/** A look with random places, sheets, modifiers and heads of the demo job's kit, and random powers. */
export function randomLook(random: () => number): Draft {
  const lookId = pick(random, ['dusk', 'dusk-draft-1', 'first-light'])
  let draft = draftOf(demoPlan, lookId)
  let isOldHeadFree = true
  const left = new Map(Object.entries(demoPlan.gels).map(([id, { sheets }]) => [id, sheets]))
  for (const [id, light] of Object.entries(demoPlan.looks[lookId]!.lights)) {
    const jitter = (metres: number): number => Math.round((metres + 0.3 * (random() - 0.5)) * 100) / 100
    const { xMetres, yMetres, zMetres } = light.place
    const takesOld: boolean = isOldHeadFree && random() < 0.25
    if (takesOld) isOldHeadFree = false
    const modifierId = pick(random, INSTEAD[light.modifierId]!)
    const gelIds = pick(random, SHEETS.filter((sheets) => sheets.every((gelId) => left.get(gelId)! > 0)))
    for (const gelId of gelIds) left.set(gelId, left.get(gelId)! - 1)
    const set: Partial<Light> = {
      place: { xMetres: jitter(xMetres), yMetres: jitter(yMetres), zMetres: jitter(zMetres) },
      gelIds: [...gelIds],
      modifierId,
      headId: takesOld ? 'old-head-1000' : 'head-1000',
      grid: modifierId === light.modifierId ? light.grid : { ...light.grid, kind: 'none' },
    }
    draft = { ...draft, plan: withLight(lookId, id, set, draft.plan) }
  }
  return withRandomPowers(draft, random)
}

/** The level of every area that receives any light at all. */
export function levelsOf({ areas }: Prediction): Want[] {
  return areas.flatMap(({ id, meter }): Want[] => (meter.stops === null ? [] : [{ kind: 'area-level', areaId: id, stops: meter.stops }]))
}

/** The colour of every area in frame. */
export function coloursOf({ areas }: Prediction): Want[] {
  return areas.flatMap(({ id, inFrame, colour }): Want[] => (inFrame ? [{ kind: 'area-colour', areaId: id, xyz: colour.xyz }] : []))
}

/** One light of a look put elsewhere on its axis with other sheets. */
export function forgotten(draft: Draft, lightId: string, gelIds: readonly string[], stepsIn: number): Draft {
  return chosen(draft, lightId, { gelIds, stepsIn })
}

export function predictionOf(draft: Draft): Prediction {
  return predict(draft.plan, draft.lookId)
}

export { lightOf }
