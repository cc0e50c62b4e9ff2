import { type Vector, direction, subtract } from '../arithmetic/vector.ts'
import { type BuiltSet, type StandingLight, builtSet } from '../set/builtSet.ts'
import type { PatchedPanel } from '../set/patches.ts'
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
 * @param scene the set; keep it and its parts as objects while they are unchanged, since work is remembered with them
 * @param lightId a light of the scene; an unknown one gives nothing
 * @param receiver what it sees of the surroundings is remembered, by its values
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
  set.occludersWithFronts.standOn(receiver.ownShadow ?? null)
  for (const emitter of light.emitters) {
    addDirectLight(emitter, light.index, set.occludersWithFronts,
      place[0] + facing[0] * SURFACE_CLEARANCE_METRES,
      place[1] + facing[1] * SURFACE_CLEARANCE_METRES,
      place[2] + facing[2] * SURFACE_CLEARANCE_METRES,
      facing[0], facing[1], facing[2], toLight[0], toLight[1], toLight[2], true)
  }
  set.occludersWithFronts.standOn(null)
  return { flat: directSum.flat, domeOut: directSum.domeOut, domeToLight: directSum.domeToLight }
}

function receiptOf(
  factor: number, flat: number, angle: number, x: number, y: number, z: number, facing: Vector, toLight: Vector,
): Receipt {
  const half = factor / 2
  return {
    flat: factor * flat,
    domeOut: half * (angle + x * facing[0] + y * facing[1] + z * facing[2]),
    domeToLight: half * (angle + x * toLight[0] + y * toLight[1] + z * toLight[2]),
  }
}

/** Sums over the patches of one surface: cosine integral, solid angle, direction integral; all times exposure. */
const sums = new Float64Array(PER_PATCH)

function surfaceLegs(set: BuiltSet, light: StandingLight, receiver: Receiver, toLight: Vector): readonly SurfaceLeg[] {
  const { patchExposure } = landingOf(set.surroundings, light)
  const { perPatch, panelInSight } = patchView(set.surroundings, receiver)
  const { patches: { panels, otherSide }, surfaces } = set
  const legs: SurfaceLeg[] = []
  for (let p = 0; p < panels.length;) {
    const { surfaceIndex } = panels[p]!
    const { id, transmittance } = surfaces[surfaceIndex]!
    const firstPanel = p
    while (p < panels.length && panels[p]!.surfaceIndex === surfaceIndex) p++
    sumPanels(perPatch, panelInSight, panels, firstPanel, p, patchExposure, null)
    addLeg(legs, id, 'reflected', 1 - transmittance, receiver, toLight)
    if (transmittance === 0) continue
    sumPanels(perPatch, panelInSight, panels, firstPanel, p, patchExposure, otherSide)
    addLeg(legs, id, 'passed', transmittance, receiver, toLight)
  }
  return legs
}

/** Adds what `sums` hold as a leg, unless that is nothing. */
function addLeg(
  legs: SurfaceLeg[], surfaceId: string, by: SurfaceLeg['by'], share: number, { facing }: Receiver, toLight: Vector,
): void {
  if (sums[1] === 0) return
  const receipt = receiptOf(share / Math.PI, sums[0]!, sums[1]!, sums[2]!, sums[3]!, sums[4]!, facing, toLight)
  legs.push({ surfaceId, by, receipt })
}

/** Adds up what the patches of some panels send, lit on this side or, by `otherSide`, through from the far one. */
function sumPanels(
  perPatch: Float64Array, panelInSight: Uint8Array, panels: readonly PatchedPanel[], firstPanel: number, endPanel: number,
  patchExposure: Float64Array, otherSide: Int32Array | null,
): void {
  let flat = 0
  let angle = 0
  let x = 0
  let y = 0
  let z = 0
  for (let p = firstPanel; p < endPanel; p++) {
    if (panelInSight[p] === 0) continue
    const { first, columns, rows } = panels[p]!
    for (let i = first; i < first + columns * rows; i++) {
      const exposure = patchExposure[otherSide === null ? i : otherSide[i]!]!
      const o = PER_PATCH * i
      flat += exposure * perPatch[o]!
      angle += exposure * perPatch[o + 1]!
      x += exposure * perPatch[o + 2]!
      y += exposure * perPatch[o + 3]!
      z += exposure * perPatch[o + 4]!
    }
  }
  sums[0] = flat
  sums[1] = angle
  sums[2] = x
  sums[3] = y
  sums[4] = z
}

/** Light that fills the room evenly: what the receiver sees of all surfaces together, each as bright as the others. */
function cavityReceipt(set: BuiltSet, receiver: Receiver, toLight: Vector): Receipt {
  const [flat, angle, x, y, z] = patchView(set.surroundings, receiver).whole
  return receiptOf(1 / (Math.PI * set.surfaceAreaSquareMetres), flat!, angle!, x!, y!, z!, receiver.facing, toLight)
}
