import { polygonView, viewPolygon } from '../photometry/polygon.ts'
import type { PatchedPanel } from '../set/patches.ts'
import type { Surroundings } from '../set/surroundings.ts'
import type { Receiver } from './receipt.ts'

/** Numbers a patch: cosine integral above the horizon, solid angle, and the integral of the direction (x, y, z). */
export const PER_PATCH = 5
/** Place a little outside the surface that a receiver lies on, so that its own surface does not hide its sky. */
export const SURFACE_CLEARANCE_METRES = 0.001

export interface PatchView {
  readonly perPatch: Float64Array
  /** The same numbers added up over each panel, and over everything. */
  readonly perPanel: Float64Array
  readonly whole: Float64Array
}

const remembered = new WeakMap<Surroundings, WeakMap<Receiver, PatchView>>()

/**
 * What a receiver sees of every patch, the subject and the pieces in the way. Each panel as a whole is exact in closed
 * form; its patches share that out. No light enters, so one view serves all lights.
 */
export function patchView(surroundings: Surroundings, receiver: Receiver): PatchView {
  let views = remembered.get(surroundings)
  if (!views) remembered.set(surroundings, (views = new WeakMap()))
  let view = views.get(receiver)
  if (!view) views.set(receiver, (view = lookAround(surroundings, receiver)))
  return view
}

function lookAround(surroundings: Surroundings, receiver: Receiver): PatchView {
  const { patches, surfaces } = surroundings
  const perPatch = new Float64Array(PER_PATCH * patches.count)
  const perPanel = new Float64Array(PER_PATCH * patches.panels.length)
  const whole = new Float64Array(PER_PATCH)
  patches.panels.forEach((patched, p) => {
    if (surfaces[patched.surfaceIndex]!.id === receiver.surfaceId) return
    viewPanel(surroundings, patched, receiver, perPatch)
    for (let i = patched.first; i < patched.first + patched.columns * patched.rows; i++) {
      for (let k = 0; k < PER_PATCH; k++) perPanel[PER_PATCH * p + k]! += perPatch[PER_PATCH * i + k]!
    }
    for (let k = 0; k < PER_PATCH; k++) whole[k]! += perPanel[PER_PATCH * p + k]!
  })
  return { perPatch, perPanel, whole }
}

function viewPanel(surroundings: Surroundings, patched: PatchedPanel, receiver: Receiver, view: Float64Array): void {
  const { panel, first, columns, rows, corners, cellMetres } = patched
  const [nx, ny, nz] = receiver.facing
  const px = receiver.place[0] + nx * SURFACE_CLEARANCE_METRES
  const py = receiver.place[1] + ny * SURFACE_CLEARANCE_METRES
  const pz = receiver.place[2] + nz * SURFACE_CLEARANCE_METRES
  const [ax, ay, az] = panel.normal
  const [cx, cy, cz] = panel.centre
  if ((px - cx) * ax + (py - cy) * ay + (pz - cz) * az <= 1e-6) return
  viewPolygon(corners, 4, px, py, pz, nx, ny, nz)
  const { aboveHorizon, solidAngle } = polygonView
  const { occluders, patches } = surroundings
  const blockers = occluders.consider(px, py, pz, cx, cy, cz, patched.radiusMetres, -1)

  let flatTotal = 0
  let angleTotal = 0
  for (let i = first; i < first + columns * rows; i++) {
    const dx = patches.centres[3 * i]! - px
    const dy = patches.centres[3 * i + 1]! - py
    const dz = patches.centres[3 * i + 2]! - pz
    const inverseSquare = 1 / (dx * dx + dy * dy + dz * dz)
    const inverse = Math.sqrt(inverseSquare)
    const angle = Math.max(0, -(dx * ax + dy * ay + dz * az)) * inverse * inverseSquare
    const cosOut = (dx * nx + dy * ny + dz * nz) * inverse
    angleTotal += angle
    if (cosOut > 0) flatTotal += angle * cosOut
    // Just short of the patch, or its own panel would hide it.
    const short = 1 - 1e-6
    const visible = blockers === 0 ? 1
      : occluders.visibleShare(px + dx * short, py + dy * short, pz + dz * short, cellMetres)
    const o = PER_PATCH * i
    view[o] = cosOut > 0 ? angle * cosOut * visible : 0
    view[o + 1] = angle * visible
    view[o + 2] = angle * visible * dx * inverse
    view[o + 3] = angle * visible * dy * inverse
    view[o + 4] = angle * visible * dz * inverse
  }
  const flatScale = flatTotal > 0 ? aboveHorizon / flatTotal : 0
  const angleScale = angleTotal > 0 ? solidAngle / angleTotal : 0
  for (let i = first; i < first + columns * rows; i++) {
    const o = PER_PATCH * i
    view[o]! *= flatScale
    for (let k = 1; k < PER_PATCH; k++) view[o + k]! *= angleScale
  }
}
