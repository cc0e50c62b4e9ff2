import { type Vector, direction, dot, subtract } from '../arithmetic/vector.ts'
import { type BuiltSet, type StandingLight, builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { addDirectLight, directSum } from './directLight.ts'
import { landingOf } from './landing.ts'
import { PER_PATCH, SURFACE_CLEARANCE_METRES, patchView } from './patchView.ts'
import { NOTHING_RECEIVED, type Receipt, type Receiver } from './receipt.ts'

/** Light that came by way of one surface. */
export interface SurfaceLeg {
  readonly surfaceId: string
  /**
   * 'reflected': as if the surface returned everything it does not let through; multiply by its reflectance.
   * 'passed': through a scrim; its transmittance is already in, nothing to multiply by.
   */
  readonly by: 'reflected' | 'passed'
  readonly receipt: Receipt
}

/** One light at one place, by every way it can come; all for one lumen-second of the bare tube. */
export interface LightAtPoint {
  readonly direct: Receipt
  /** Surfaces that send something, in the set's order of surfaces. */
  readonly viaSurfaces: readonly SurfaceLeg[]
  /**
   * What one lumen-second of light gone astray in the room gives here; multiply by the share that `strayShare` says.
   */
  readonly cavity: Receipt
}

const NOTHING: LightAtPoint = { direct: NOTHING_RECEIVED, viaSurfaces: [], cavity: NOTHING_RECEIVED }

/**
 * Light from one light at one place.
 *
 * @param scene the set; keep the object while nothing moves, since work is remembered with it
 * @param lightId a light of the scene; an unknown one gives nothing
 * @param receiver keep the object too
 */
export function lightAtPoint(scene: Scene, lightId: string, receiver: Receiver): LightAtPoint {
  const set = builtSet(scene)
  const light = set.lights.get(lightId)
  if (!light) return NOTHING
  const toLight = direction(subtract(light.emitters[0]!.centre, receiver.place), receiver.facing)
  return {
    direct: directReceipt(set, light, receiver, toLight),
    viaSurfaces: surfaceLegs(set, light, receiver, toLight),
    cavity: cavityReceipt(set, receiver, toLight),
  }
}

/** Light straight from the fronts of one light. */
export function directReceipt(set: BuiltSet, light: StandingLight, receiver: Receiver, toLight: Vector): Receipt {
  const { place, facing } = receiver
  directSum.flat = 0
  directSum.domeOut = 0
  directSum.domeToLight = 0
  for (const emitter of light.emitters) {
    addDirectLight(emitter, light.index, set.occludersWithFronts,
      place[0] + facing[0] * SURFACE_CLEARANCE_METRES,
      place[1] + facing[1] * SURFACE_CLEARANCE_METRES,
      place[2] + facing[2] * SURFACE_CLEARANCE_METRES,
      facing[0], facing[1], facing[2], toLight[0], toLight[1], toLight[2], true)
  }
  return { flat: directSum.flat, domeOut: directSum.domeOut, domeToLight: directSum.domeToLight }
}

/** Sums over patches: cosine integral, solid angle, direction integral; all times exposure. */
const sums = new Float64Array(PER_PATCH)

function receiptOfSums(factor: number, facing: Vector, toLight: Vector): Receipt {
  const [flat, angle, x, y, z] = sums as unknown as readonly [number, number, number, number, number]
  const along: Vector = [x, y, z]
  return {
    flat: factor * flat,
    domeOut: (factor * (angle + dot(along, facing))) / 2,
    domeToLight: (factor * (angle + dot(along, toLight))) / 2,
  }
}

function surfaceLegs(set: BuiltSet, light: StandingLight, receiver: Receiver, toLight: Vector): readonly SurfaceLeg[] {
  const { patchExposure } = landingOf(set.surroundings, light)
  const view = patchView(set.surroundings, receiver)
  const { patches, surfaces } = set
  const legs: SurfaceLeg[] = []
  const addLeg = (surfaceIndex: number, by: SurfaceLeg['by']) => {
    if (sums[1] === 0) return
    const { id, transmittance } = surfaces[surfaceIndex]!
    const share = by === 'passed' ? transmittance : 1 - transmittance
    legs.push({ surfaceId: id, by, receipt: receiptOfSums(share / Math.PI, receiver.facing, toLight) })
  }
  for (let p = 0; p < patches.panels.length;) {
    const { surfaceIndex, first } = patches.panels[p]!
    while (p < patches.panels.length && patches.panels[p]!.surfaceIndex === surfaceIndex) p++
    const last = p < patches.panels.length ? patches.panels[p]!.first : patches.count
    sumPatches(view, patchExposure, null, first, last)
    addLeg(surfaceIndex, 'reflected')
    if (surfaces[surfaceIndex]!.transmittance > 0) {
      sumPatches(view, patchExposure, patches.otherSide, first, last)
      addLeg(surfaceIndex, 'passed')
    }
  }
  return legs
}

/** Adds up what the patches of one surface send, lit on this side or, by `otherSide`, through from the far one. */
function sumPatches(
  view: Float64Array, patchExposure: Float64Array, otherSide: Int32Array | null, first: number, last: number,
): void {
  sums.fill(0)
  for (let i = first; i < last; i++) {
    const exposure = patchExposure[otherSide === null ? i : otherSide[i]!]!
    if (exposure === 0) continue
    const o = PER_PATCH * i
    for (let k = 0; k < PER_PATCH; k++) sums[k]! += exposure * view[o + k]!
  }
}

/** Light that fills the room evenly: what the receiver sees of all surfaces together, each as bright as the others. */
function cavityReceipt(set: BuiltSet, receiver: Receiver, toLight: Vector): Receipt {
  const view = patchView(set.surroundings, receiver)
  sums.fill(0)
  for (let o = 0; o < view.length; o += PER_PATCH) {
    for (let k = 0; k < PER_PATCH; k++) sums[k]! += view[o + k]!
  }
  return receiptOfSums(1 / (Math.PI * totalArea(set)), receiver.facing, toLight)
}

function totalArea(set: BuiltSet): number {
  return set.surfaces.reduce((sum, { areaSquareMetres }) => sum + areaSquareMetres, 0)
}
