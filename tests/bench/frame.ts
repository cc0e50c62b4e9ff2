import { readFileSync } from 'node:fs'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Layer } from '../../shared-core/picture/layer.ts'
import { MESH_EYE, type SeenSurface } from '../../shared-core/picture/seenSurface.ts'
import { shinesOf } from '../../shared-core/picture/shine.ts'
import { lightSurface, type ShineOnSurface } from '../../shared-core/picture/surfaceLight.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { Emitter } from '../../shared-core/set/emitter.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import type { BenchRow } from './row.ts'
import { tracedLayer, treeOf } from './tracedLayer.ts'

const LOOK = 'dusk'
/** The key: a large front, of which the subject hides part from itself, and nothing else stands between. */
const LIGHT = 'a'
const CONVERGED_RAYS = 4096
const EVERY_SLOT = 60

/** What layers weigh, and what they save against a ray tracer that errs as much. */
export async function frameRows(): Promise<BenchRow[]> {
  const asset = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
  const { scene, view, lights } = new LookPicture(asset).parts(demoPlan, LOOK, { width: 360, height: 480, soloLightId: null, coarse: false })
  const bytes = lights.reduce((sum, { layer }) => sum + bytesOf(layer), 0)
  const set = builtSet(scene)
  const seen = view.samples.surface
  const light = set.lights.get(LIGHT)!
  const shine = shinesOf(set, light, seen.middle, 'full', () => 0)[0]!
  const ours: ShineOnSurface = { exposure: new Float32Array(seen.count), visible: new Float32Array(seen.count) }
  const oursMs = cpuMs(() => lightSurface(ours, shine, seen, null), 40)
  const traced = tracedAsGood(seen, light.emitters[0]!, ours.exposure)
  return [
    { name: 'picture: memory of layers', value: bytes / 1e6, unit: 'MB', target: 12, better: 'lower', note: `${lights.length} lights, 360 x 480` },
    {
      name: 'picture: a light on the subject, over a ray tracer of equal error', value: traced.ms / oursMs, unit: 'x', target: null, better: 'higher',
      note: `${traced.rays} rays a vertex, ${traced.ms.toFixed(0)} CPU ms against ${oursMs.toFixed(1)} ms; error ${percent(traced.error)} against ` +
        `${percent(traced.ourError)} of the 99th percentile, eyes left out; ${CONVERGED_RAYS} rays are the truth`,
    },
  ]
}

/** Mean processor time of a warm call: the two sides of a ratio are not measured at the same moment, and others may be at work. */
function cpuMs(call: () => void, calls: number): number {
  for (let i = 0; i < Math.ceil(calls / 4); i++) call()
  const before = process.cpuUsage()
  for (let i = 0; i < calls; i++) call()
  return process.cpuUsage(before).user / 1000 / calls
}

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`

/** Finds the fewest rays whose error is no greater than ours, on some of the vertices; its time is that on all of them. */
function tracedAsGood(seen: SeenSurface, emitter: Emitter, ours: Float32Array): { rays: number, ms: number, error: number, ourError: number } {
  const tree = treeOf(seen)
  // An eyeball lies under its lid by less than the clearance that a ray starts with: there the tracer is no judge.
  const some = Array.from({ length: Math.floor(seen.count / EVERY_SLOT) }, (_, i) => i * EVERY_SLOT)
    .filter((slot) => seen.materials[slot] !== MESH_EYE)
  const all = Array.from({ length: seen.count }, (_, slot) => slot)
  const random = repeatable()
  const truth = tracedLayer(tree, seen, some, emitter, CONVERGED_RAYS, random)
  const bright = Float64Array.from(truth).sort()[Math.floor(0.99 * (truth.length - 1))]!
  const errorOf = (values: ArrayLike<number>): number =>
    Math.sqrt(truth.reduce((sum, value, i) => sum + (values[i]! - value) ** 2, 0) / truth.length) / bright
  const ourError = errorOf(some.map((slot) => ours[slot]!))
  for (let side = 1; side <= 24; side++) {
    const rays = side * side
    const error = errorOf(tracedLayer(tree, seen, some, emitter, rays, random))
    if (error > ourError && side < 24) continue
    return { rays, error, ourError, ms: cpuMs(() => tracedLayer(tree, seen, all, emitter, rays, random), 2) }
  }
  throw new Error('unreachable')
}

/** Numbers from 0 to 1 that are the same at each run (Park and Miller 1988). */
function repeatable(): () => number {
  let state = 20_261
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647
}

function bytesOf({ surface, grounds }: Layer): number {
  const arrays = [...Object.values(surface), ...grounds.flatMap((ground) => (ground === null ? [] : Object.values(ground)))] as Float32Array[]
  return arrays.reduce((sum, array) => sum + array.byteLength, 0)
}
