import { returnedOf, surfaceLayer, type SurfaceLayer } from '../../shared-core/picture/layer.ts'
import { platesBetween } from '../../shared-core/picture/platesBetween.ts'
import { poseSubject } from '../../shared-core/picture/posedSubject.ts'
import { surfaceSamples, type SurfaceSamples } from '../../shared-core/picture/surfaceSamples.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { Scene } from '../../shared-core/set/scene.ts'
import type { SubjectAsset } from '../../shared-core/subject/asset/format.ts'

/** What the camera sees of a subject, small: enough samples that every part of it is met. */
export function samplesOf(scene: Scene, asset: SubjectAsset, width = 120, height = 160): SurfaceSamples {
  return surfaceSamples(poseSubject(asset, scene.subject), builtSet(scene).view, width, height)
}

/** One light on it, as the picture has it. */
export function layerFor(scene: Scene, samples: SurfaceSamples, lightId: string, skinSheen = 0.3): SurfaceLayer {
  const set = builtSet(scene)
  const light = set.lights.get(lightId)!
  const { middle, radiusMetres } = samples.surface
  const plates = platesBetween(set, light.index, light.emitters[0]!, middle, radiusMetres)
  return surfaceLayer(scene, samples, lightId, returnedOf(scene, lightId), plates, skinSheen, 'full')
}

/** The value that 99 of a hundred do not pass. */
export function percentile99(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort()
  return sorted[Math.floor(0.99 * (sorted.length - 1))]!
}

/** Root of the mean square of the differences. */
export function rootMeanSquare(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i]! - b[i]!) ** 2
  return Math.sqrt(sum / a.length)
}
