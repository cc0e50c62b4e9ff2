import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createPredictor, predict } from '../../shared-core/predict/predict.ts'
import { medianMs, type BenchRow } from './row.ts'

/** The whole prediction of a look, without a picture: from nothing, after a moved light, and after a changed power. */
export async function predictRows(): Promise<BenchRow[]> {
  const lookId = Object.keys(demoPlan.looks)[0]!
  const eight = withLightsDoubled(demoPlan, lookId)
  return [
    row('prediction from nothing, 4 lights', medianMs(() => predict(demoPlan, lookId)), 2),
    row('prediction from nothing, 8 lights', medianMs(() => predict(eight, lookId)), 4),
    row('prediction after a light moved, 4 lights', medianMs(changing(demoPlan, lookId, 'move')), 2),
    row('prediction after a power changed, 4 lights', medianMs(changing(demoPlan, lookId, 'power')), 2),
  ]
}

function row(name: string, value: number, target: number): BenchRow {
  return { name, value, unit: 'ms', target, better: 'lower', note: 'warm median, one core' }
}

/** A predictor that keeps its stages, fed a different plan at each call. */
function changing(plan: Plan, lookId: string, what: 'move' | 'power'): () => void {
  const look = plan.looks[lookId]!
  const [lightId, light] = Object.entries(look.lights)[0]!
  const variants = [0, 1, 2, 3].map((step): Plan => {
    const changed = what === 'power'
      ? { ...light, energyJoules: light.energyJoules * (1 + step / 10) }
      : { ...light, place: { ...light.place, xMetres: light.place.xMetres + step / 50 } }
    return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, lights: { ...look.lights, [lightId]: changed } } } }
  })
  const remembering = createPredictor()
  let call = 0
  return () => { remembering(variants[call++ % variants.length]!, lookId) }
}

function withLightsDoubled(plan: Plan, lookId: string): Plan {
  const look = plan.looks[lookId]!
  const more = Object.entries(look.lights).map(([id, light]) => [`${id}-2`, {
    ...light,
    letter: String.fromCharCode(light.letter.charCodeAt(0) + 4),
    place: { ...light.place, xMetres: -light.place.xMetres - 0.2 },
  }] as const)
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, lights: { ...look.lights, ...Object.fromEntries(more) } } } }
}
