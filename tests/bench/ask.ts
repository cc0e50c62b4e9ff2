import { ask } from '../../shared-core/ask/ask.ts'
import type { Want } from '../../shared-core/ask/want.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { createPredictor, predict } from '../../shared-core/predict/predict.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { medianMs, type BenchRow } from './row.ts'

const LOOK_ID = 'dusk'

/** Asking backwards with four lights: powers alone as while a marker is dragged, and with sheets and distances. */
export async function askRows(): Promise<BenchRow[]> {
  const { areas } = predict(demoPlan, LOOK_ID)
  const levels = areas.flatMap(({ id, meter }): Want[] => (meter.stops === null ? [] : [{ kind: 'area-level', areaId: id, stops: meter.stops }]))
  const colours = areas.flatMap(({ id, inFrame, colour }): Want[] => (inFrame ? [{ kind: 'area-colour', areaId: id, xyz: colour.xyz }] : []))
  const dragged: Want[] = [{ kind: 'area-level', areaId: 'background-centre', stops: -1.5 }]
  const dimmer = changed({ a: 20, b: 900, c: 40, d: 300 })
  const astray = changed({ a: 20, b: 900, c: 40, d: 300 }, { c: 'teal' })
  const predictor = createPredictor()
  const time = (plan: Plan, wants: readonly Want[], isPowersOnly: boolean) =>
    medianMs(() => ask(plan, LOOK_ID, wants, { predictor, isPowersOnly }), isPowersOnly
      ? { warmUps: 20, rounds: 11, callsARound: 3 } : { warmUps: 2, rounds: 5, callsARound: 1 })
  return [
    row('Ask, one marker dragged, powers, 4 lights', time(demoPlan, dragged, true), 30),
    row('Ask, every level, powers, 4 lights', time(dimmer, levels, true), 30),
    row('Ask, f/16 at ISO 100, every kind of way, 4 lights', time(demoPlan, [{ kind: 'aperture', fNumber: 16 }, { kind: 'iso', isoSpeed: 100 }], false), 1000),
    row('Ask, every level and colour, sheets and distances, 4 lights', time(astray, [...levels, ...colours], false), 1000),
  ]
}

function row(name: string, value: number, target: number): BenchRow {
  return { name, value, unit: 'ms', target, better: 'lower', note: 'warm median, one core' }
}

function changed(energies: Readonly<Record<string, number>>, sheets: Readonly<Record<string, string>> = {}): Plan {
  const look = demoPlan.looks[LOOK_ID]!
  const lights = Object.fromEntries(Object.entries(look.lights).map(([id, light]) => {
    const sheet = sheets[id]
    return [id, { ...light, energyJoules: energies[id] ?? light.energyJoules, gelIds: sheet === undefined ? light.gelIds : [sheet] }]
  }))
  return { ...demoPlan, looks: { ...demoPlan.looks, [LOOK_ID]: { ...look, lights } } }
}
