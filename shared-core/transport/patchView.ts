import { polygonView, viewPolygon } from '../photometry/polygon.ts'
import { NOBODY } from '../set/occluders.ts'
import type { PatchedPanel } from '../set/patches.ts'
import type { Surroundings } from '../set/surroundings.ts'
import type { Receiver } from './receipt.ts'

/** Numbers a patch: cosine integral above the horizon, solid angle, and the integral of the direction (x, y, z). */
export const PER_PATCH = 5
/** Place a little outside the surface that a receiver lies on, so that its own surface does not hide its sky. */
export const SURFACE_CLEARANCE_METRES = 0.001

export interface PatchView {
  readonly perPatch: Float64Array
  /** 1 for a panel that is in sight at all. */
  readonly panelInSight: Uint8Array
  /** The same numbers added up over everything. */
  readonly whole: Float64Array
}

interface Remembered {
  readonly receiver: Receiver
  readonly view: PatchView
}

/** What was worked out lately; the places of a look are asked for in the same order again and again. */
class ViewsInOrder {
  private readonly views: Remembered[] = []
  private next = 0

  of(receiver: Receiver, lookAround: () => PatchView): PatchView {
    const count = this.views.length
    for (let k = 0; k < count; k++) {
      const at = (this.next + k) % count
      const remembered = this.views[at]!
      if (!isSameReceiver(remembered.receiver, receiver)) continue
      this.next = at + 1
      return remembered.view
    }
    // A point that is dragged leaves views behind: forget them all now and then rather than keep a hundred.
    if (count >= MOST_VIEWS) this.views.length = 0
    const view = lookAround()
    this.views.push({ receiver, view })
    this.next = 0
    return view
  }
}

const MOST_VIEWS = 128
const remembered = new WeakMap<Surroundings, ViewsInOrder>()

function isSameReceiver(a: Receiver, b: Receiver): boolean {
  if (a === b) return true
  return a.place[0] === b.place[0] && a.place[1] === b.place[1] && a.place[2] === b.place[2] &&
    a.facing[0] === b.facing[0] && a.facing[1] === b.facing[1] && a.facing[2] === b.facing[2] &&
    a.surfaceId === b.surfaceId && a.ownShadow?.words === b.ownShadow?.words
}

/**
 * What a receiver sees of every patch, the subject and the pieces in the way. Each panel as a whole is exact in closed
 * form; its patches share that out. No light enters, so one view serves all lights.
 */
export function patchView(surroundings: Surroundings, receiver: Receiver): PatchView {
  let views = remembered.get(surroundings)
  if (!views) remembered.set(surroundings, (views = new ViewsInOrder()))
  return views.of(receiver, () => lookAround(surroundings, receiver))
}

function lookAround(surroundings: Surroundings, receiver: Receiver): PatchView {
  const { patches, surfaces } = surroundings
  const view: PatchView = {
    perPatch: new Float64Array(PER_PATCH * patches.count),
    panelInSight: new Uint8Array(patches.panels.length),
    whole: new Float64Array(PER_PATCH),
  }
  surroundings.occluders.standOn(receiver.ownShadow ?? null)
  patches.panels.forEach((patched, p) => {
    if (surfaces[patched.surfaceIndex]!.id === receiver.surfaceId) return
    if (viewPanel(surroundings, patched, receiver, view)) view.panelInSight[p] = 1
  })
  surroundings.occluders.standOn(null)
  return view
}

/** Fills in what the receiver sees of one panel; false when that is nothing. */
function viewPanel(surroundings: Surroundings, patched: PatchedPanel, receiver: Receiver, view: PatchView): boolean {
  const { perPatch, whole } = view
  const { panel, first, columns, rows, corners, cellMetres } = patched
  const [nx, ny, nz] = receiver.facing
  const px = receiver.place[0] + nx * SURFACE_CLEARANCE_METRES
  const py = receiver.place[1] + ny * SURFACE_CLEARANCE_METRES
  const pz = receiver.place[2] + nz * SURFACE_CLEARANCE_METRES
  const [ax, ay, az] = panel.normal
  const [cx, cy, cz] = panel.centre
  if ((px - cx) * ax + (py - cy) * ay + (pz - cz) * az <= 1e-6) return false
  viewPolygon(corners, 4, px, py, pz, nx, ny, nz)
  const { aboveHorizon, solidAngle } = polygonView
  const { occluders, patches } = surroundings
  const blockers = occluders.consider(px, py, pz, cx, cy, cz, patched.radiusMetres, NOBODY)

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
    perPatch[o] = cosOut > 0 ? angle * cosOut * visible : 0
    perPatch[o + 1] = angle * visible
    perPatch[o + 2] = angle * visible * dx * inverse
    perPatch[o + 3] = angle * visible * dy * inverse
    perPatch[o + 4] = angle * visible * dz * inverse
  }
  const angleScale = angleTotal > 0 ? solidAngle / angleTotal : 0
  const flatScale = flatTotal > 0 ? aboveHorizon / flatTotal : 0
  // A sliver above the horizon may hold no patch's middle: all patches share it.
  const sliver = angleTotal > 0 ? aboveHorizon / angleTotal : 0
  let angleSeen = 0
  for (let i = first; i < first + columns * rows; i++) {
    const o = PER_PATCH * i
    angleSeen += perPatch[o + 1]!
    perPatch[o] = flatTotal > 0 ? perPatch[o]! * flatScale : perPatch[o + 1]! * sliver
    for (let k = 1; k < PER_PATCH; k++) perPatch[o + k]! *= angleScale
    for (let k = 0; k < PER_PATCH; k++) whole[k]! += perPatch[o + k]!
  }
  return angleSeen > 0
}
