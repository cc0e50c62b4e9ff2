import { readFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture, type PictureRequest } from '../../shared-core/predict/lookPicture.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { medianMs, type BenchRow } from './row.ts'

const SUBJECT_FILE = new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)
const LOOK = 'dusk'
const full: PictureRequest = { width: 360, height: 480, soloLightId: null, coarse: false }

/** The predicted picture of the demo look, 360 x 480, four lights: after a change of colour, of one light, of the camera. */
export async function pictureRows(): Promise<BenchRow[]> {
  const bytes = readFileSync(SUBJECT_FILE)
  const asset = decodeSubject(bytes)
  const look = demoPlan.looks[LOOK]!
  const step = (path: readonly string[], from: number, by: number) => (i: number): Plan =>
    applyEdit(demoPlan, { name: 'bench', changes: [{ path: ['looks', LOOK, ...path], set: from + by * (1 + (i % 40)) }] })
  const recoloured = step(['lights', 'a', 'energyJoules'], look.lights['a']!.energyJoules, 1)
  const moved = step(['lights', 'c', 'place', 'xMetres'], look.lights['c']!.place.xMetres, 0.002)
  const panned = step(['camera', 'place', 'zMetres'], look.camera.place.zMetres, 0.002)
  const time = (plan: (i: number) => Plan, request: PictureRequest, rounds: number): number => {
    const picture = new LookPicture(asset)
    let i = 0
    return medianMs(() => { picture.draw(plan(i++), LOOK, request) }, { warmUps: 2 * rounds, rounds, callsARound: 2 })
  }
  const row = (name: string, value: number, target: number): BenchRow =>
    ({ name, value, unit: 'ms', target, better: 'lower', note: 'warm median, one core, 360 x 480, 4 lights' })
  return [
    row('picture: recolour', time(recoloured, full, 21), 8),
    row('picture: a light moved, full', time(moved, full, 15), 30),
    row('picture: a light moved, coarse', time(moved, { ...full, coarse: true }, 15), 10),
    {
      ...row('picture: a light moved, as drawn under a hand', time(moved, { ...full, width: 180, height: 240, coarse: true }, 15), 10),
      note: 'warm median, one core, 180 x 240 shown twice as large, 4 lights',
    },
    row('picture: camera moved, full', time(panned, full, 7), 800),
    row('picture: camera moved, coarse', time(panned, { ...full, coarse: true }, 7), 150),
    { name: 'picture: the subject over the wire', value: gzipSync(bytes).length / 1e6, unit: 'MB gzipped', target: 1.5, better: 'lower', note: 'mesh and own shadows' },
  ]
}
