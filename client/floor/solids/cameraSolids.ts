import { add, scale, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Camera } from '../../../shared-core/plan/schema/look.ts'
import { cameraView, sightThrough } from '../../../shared-core/set/camera.ts'
import { vectorOf } from '../../../shared-core/set/emitter.ts'
import { aimedOrientation } from './orientation.ts'
import { ring, type Solid } from './solid.ts'

/** A hand camera's body; common practice, no source. */
const BODY_LONG_METRES = 0.145
const BODY_SHORT_METRES = 0.105
const BODY_DEEP_METRES = 0.075

/** Body and lens in true size; the lens as long as its focal length, no shorter than a pancake. */
export function cameraSolids(camera: Camera): Solid[] {
  const { axis, right, up } = aimedOrientation(camera.place, camera.aim)
  const centre = vectorOf(camera.place)
  const upright = camera.sensorHeightMillimetres > camera.sensorWidthMillimetres
  const halfWidth = (upright ? BODY_SHORT_METRES : BODY_LONG_METRES) / 2
  const halfHeight = (upright ? BODY_LONG_METRES : BODY_SHORT_METRES) / 2
  const lensLength = Math.min(0.4, Math.max(0.03, camera.focalLengthMillimetres / 1000))
  const corner = (across: number, along: number, back: number): Vector =>
    add(centre, add(scale(right, across * halfWidth), add(scale(up, along * halfHeight), scale(axis, -back))))
  const body = [-1, 1].flatMap((across) =>
    [-1, 1].flatMap((along) => [corner(across, along, lensLength), corner(across, along, lensLength + BODY_DEEP_METRES)]),
  )
  return [
    { part: 'camera', points: body },
    { part: 'lens', points: [...ring(add(centre, scale(axis, -lensLength)), right, up, 0.037, 14), ...ring(centre, right, up, 0.04, 14)] },
  ]
}

/**
 * The four edges of what the camera sees, each a line from the lens to where it meets the plane `y = reachMetres`
 * (the paper or the rear wall), or `longestMetres` out when it looks away from it.
 */
export function coneCorners(camera: Camera, reachMetres: number, longestMetres = 12): Vector[] {
  const view = cameraView(camera)
  const lens = view.place
  return ([[0, 0], [1, 0], [1, 1], [0, 1]] as const).map(([frameX, frameY]) => {
    const ray = sightThrough(view, frameX, frameY)
    const toPlane = ray[1] > 1e-6 ? (reachMetres - lens[1]) / ray[1] : Infinity
    return add(lens, scale(ray, toPlane > 0 ? Math.min(longestMetres, toPlane) : longestMetres))
  })
}
