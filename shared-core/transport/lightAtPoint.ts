import { type Vector, direction, dot, subtract } from '../arithmetic/vector.ts'
import { polygonView, viewPolygon } from '../photometry/polygon.ts'
import { builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { NOTHING_RECEIVED, type Receipt, type Receiver } from './receipt.ts'

/** Light that came by way of one surface. */
export interface SurfaceLeg {
  readonly surfaceId: string
  /**
   * 'reflected': for a surface that returns everything; multiply by its reflectance.
   * 'passed': through a scrim; its transmittance is already in, nothing to multiply by.
   */
  readonly by: 'reflected' | 'passed'
  readonly receipt: Receipt
}

/** One light at one place, by every way it can come; all for one lumen-second of the bare tube. */
export interface LightAtPoint {
  readonly direct: Receipt
  readonly viaSurfaces: readonly SurfaceLeg[]
  /**
   * What one lumen-second of light gone astray in the room gives here; multiply by the share that `roomReturn` says.
   */
  readonly cavity: Receipt
}

/**
 * Light from one light at one place.
 *
 * @param scene the set; keep the object while nothing moves, since work is remembered with it
 * @param lightId a light of the scene; an unknown one gives nothing
 * @param receiver keep the object too
 */
export function lightAtPoint(scene: Scene, lightId: string, receiver: Receiver): LightAtPoint {
  const emitters = builtSet(scene).emittersByLight.get(lightId) ?? []
  let flat = 0
  let domeOut = 0
  let domeToLight = 0
  const [px, py, pz] = receiver.place
  const [nx, ny, nz] = receiver.facing
  for (const emitter of emitters) {
    const towards: Vector = direction(subtract(emitters[0]!.centre, receiver.place))
    if (dot(emitter.axis, subtract(receiver.place, emitter.centre)) <= 0) continue
    const radiance = emitter.axialRadiancePerLumenSecond
    viewPolygon(emitter.corners, emitter.outline.length, px, py, pz, nx, ny, nz)
    flat += radiance * polygonView.aboveHorizon
    const { solidAngle, x, y, z } = polygonView
    domeOut += (radiance * (solidAngle + x * nx + y * ny + z * nz)) / 2
    domeToLight += (radiance * (solidAngle + x * towards[0] + y * towards[1] + z * towards[2])) / 2
  }
  return { direct: { flat, domeOut, domeToLight }, viaSurfaces: [], cavity: NOTHING_RECEIVED }
}
