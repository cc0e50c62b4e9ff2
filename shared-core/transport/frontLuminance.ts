import { dot, direction, scale, subtract } from '../arithmetic/vector.ts'
import { gridPass } from '../photometry/grid.ts'
import { power } from '../arithmetic/portable.ts'
import { builtSet } from '../set/builtSet.ts'
import type { Behind } from '../set/behind.ts'
import type { Scene } from '../set/scene.ts'
import { directReceipt } from './lightAtPoint.ts'

/** What the camera sees of something that shines, for one lumen-second of one light's bare tube. */
export interface FrontLuminance {
  /** pi times the luminance-time: what a perfect white surface would need to receive to look the same; 1/m2. */
  readonly exposureOfWhite: number
}

/**
 * How bright a lit front or a scrim stands in the picture by one light: its own front as it shines towards the camera, or
 * the light that passes a scrim from behind. 0 for solid things, whose brightness is what they receive and reflect.
 *
 * @param behind what the camera meets there, from `behindAt`
 */
export function frontLuminance(scene: Scene, behind: Behind, lightId: string): FrontLuminance {
  const set = builtSet(scene)
  if (behind.kind === 'front') {
    if (behind.lightId !== lightId) return { exposureOfWhite: 0 }
    const emitter = set.lights.get(lightId)?.emitters.find(({ axis }) => dot(axis, behind.facing) > 0.999)
    if (!emitter) return { exposureOfWhite: 0 }
    const cosAngle = dot(emitter.axis, direction(subtract(set.view.place, behind.place)))
    if (cosAngle <= 0) return { exposureOfWhite: 0 }
    const radiance = emitter.axialRadiancePerLumenSecond * power(cosAngle, emitter.front.lobeExponent) *
      gridPass(emitter.front.grid, cosAngle)
    return { exposureOfWhite: Math.PI * radiance }
  }
  const surface = set.surfaces.find(({ id }) => id === behind.surfaceId)
  if (!surface || surface.otherSideId === null) return { exposureOfWhite: 0 }
  const light = set.lights.get(lightId)
  if (!light) return { exposureOfWhite: 0 }
  const facing = scale(behind.facing, -1)
  const onFarSide = directReceipt(set, light, { place: behind.place, facing, surfaceId: surface.otherSideId }, facing)
  return { exposureOfWhite: onFarSide.flat * surface.transmittance }
}
