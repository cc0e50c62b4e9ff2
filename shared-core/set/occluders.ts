import type { Vector } from '../arithmetic/vector.ts'
import type { Emitter } from './emitter.ts'
import { isInOwnShadow, type OwnShadow } from './ownShadow.ts'
import type { Panel } from './panels.ts'
import type { Ellipsoid } from './subjectForm.ts'

/**
 * What stands in light's way: rounded parts of the body and flat plates. Kept as runs of numbers, because every fixed
 * point of every light asks here.
 *
 * Edges are soft by the width of the patch of front that a fixed point stands for, so that a shadow moves smoothly as
 * a light is dragged, and few points suffice.
 */
const PER_ELLIPSOID = 14
const PER_PLATE = 16
const PER_NEAR = 8
const ROUND = 1
/** Owner of what belongs to no light. */
export const NOBODY = -1

export class Occluders {
  private readonly ellipsoids: Float64Array
  private readonly plates: Float64Array
  private readonly plateOwners: Int32Array
  /**
   * What `consider` kept: which, and for a rounded part, in its unit-sphere space, where the point lies (3 numbers), what a
   * ray is multiplied by to say how far it leads towards the middle (3), how far that must be to pass the plane that
   * touches the part on the point's side (1), and the square of the point's distance (1).
   */
  private readonly nearEllipsoids: Int32Array
  private readonly near: Float64Array
  private nearEllipsoidCount = 0
  private readonly nearPlates: Int32Array
  private nearPlateCount = 0
  private ownShadow: OwnShadow | null = null
  private px = 0
  private py = 0
  private pz = 0

  /**
   * @param lightFronts fronts that block other lights, each with the index of the light it belongs to
   */
  constructor(
    parts: readonly Ellipsoid[], panels: readonly Panel[],
    lightFronts: readonly { readonly owner: number; readonly emitter: Emitter }[],
  ) {
    this.ellipsoids = new Float64Array(PER_ELLIPSOID * parts.length)
    parts.forEach((part, i) => this.ellipsoids.set(unitSphereForm(part), PER_ELLIPSOID * i))
    const plateCount = panels.length + lightFronts.length
    this.plates = new Float64Array(PER_PLATE * plateCount)
    this.plateOwners = new Int32Array(plateCount).fill(NOBODY)
    panels.forEach((panel, i) => this.plates.set(plateForm(panel, 0), PER_PLATE * i))
    lightFronts.forEach(({ owner, emitter }, k) => {
      const i = panels.length + k
      this.plates.set(plateForm(panelOfFront(emitter), emitter.front.shape === 'rectangle' ? 0 : ROUND), PER_PLATE * i)
      this.plateOwners[i] = owner
    })
    this.nearEllipsoids = new Int32Array(parts.length)
    this.near = new Float64Array(PER_NEAR * parts.length)
    this.nearPlates = new Int32Array(plateCount)
  }

  /**
   * Looks from now on from a place on the subject's own skin, whose shadow on itself is known beforehand: the rounded
   * parts, which the place may lie inside of, do not count then. Null looks from the air again.
   */
  standOn(ownShadow: OwnShadow | null): void {
    this.ownShadow = ownShadow
  }

  /**
   * Keeps for `visibleShare` only what could block between a point and a front; returns how many that is.
   *
   * @param owner light whose own fronts do not block it
   */
  consider(
    px: number, py: number, pz: number, ex: number, ey: number, ez: number, radius: number, owner: number,
  ): number {
    const dx = ex - px
    const dy = ey - py
    const dz = ez - pz
    const lengthSquared = dx * dx + dy * dy + dz * dz
    this.lookFrom(px, py, pz)
    const bodies = this.ellipsoids
    for (let i = 0; this.ownShadow === null && i < this.nearEllipsoids.length; i++) {
      const o = PER_ELLIPSOID * i
      if (!meetsCone(bodies[o + 9]! - px, bodies[o + 10]! - py, bodies[o + 11]! - pz, dx, dy, dz, lengthSquared,
        bodies[o + 12]!, radius)) continue
      this.keepEllipsoid(i)
      if (this.isLastTurnedAway(dx, dy, dz, radius)) this.nearEllipsoidCount--
    }
    const plates = this.plates
    for (let i = 0; i < this.nearPlates.length; i++) {
      if (this.plateOwners[i] === owner && owner !== NOBODY) continue
      const o = PER_PLATE * i
      const cx = plates[o]! - px
      const cy = plates[o + 1]! - py
      const cz = plates[o + 2]! - pz
      const nx = plates[o + 3]!
      const ny = plates[o + 4]!
      const nz = plates[o + 5]!
      const pointSide = -(cx * nx + cy * ny + cz * nz)
      const frontSide = pointSide + dx * nx + dy * ny + dz * nz
      if (pointSide > 0 ? frontSide >= radius : frontSide <= -radius) continue
      if (meetsCone(cx, cy, cz, dx, dy, dz, lengthSquared, plates[o + 14]!, radius)) {
        this.nearPlates[this.nearPlateCount++] = i
      }
    }
    return this.nearEllipsoidCount + this.nearPlateCount + (this.ownShadow === null ? 0 : 1)
  }

  /** Share of a small patch, `cell` metres wide around `to`, that a single sight from `from` meets, 0-1. */
  shareSeen(from: Vector, to: Vector, cell: number): number {
    const kept = this.consider(...from, ...to, cell, NOBODY)
    return kept === 0 ? 1 : this.visibleShare(...to, cell)
  }

  private lookFrom(px: number, py: number, pz: number): void {
    this.px = px
    this.py = py
    this.pz = pz
    this.nearEllipsoidCount = 0
    this.nearPlateCount = 0
  }

  private keepEllipsoid(i: number): void {
    const e = this.ellipsoids
    const o = PER_ELLIPSOID * i
    const x = this.px - e[o + 9]!
    const y = this.py - e[o + 10]!
    const z = this.pz - e[o + 11]!
    const ox = e[o]! * x + e[o + 1]! * y + e[o + 2]! * z
    const oy = e[o + 3]! * x + e[o + 4]! * y + e[o + 5]! * z
    const oz = e[o + 6]! * x + e[o + 7]! * y + e[o + 8]! * z
    const k = this.nearEllipsoidCount++
    this.nearEllipsoids[k] = o
    const n = PER_NEAR * k
    const near = this.near
    near[n] = ox
    near[n + 1] = oy
    near[n + 2] = oz
    near[n + 3] = -(e[o]! * ox + e[o + 3]! * oy + e[o + 6]! * oz)
    near[n + 4] = -(e[o + 1]! * ox + e[o + 4]! * oy + e[o + 7]! * oz)
    near[n + 5] = -(e[o + 2]! * ox + e[o + 5]! * oy + e[o + 8]! * oz)
    const squareOfO = ox * ox + oy * oy + oz * oz
    near[n + 6] = squareOfO - Math.sqrt(squareOfO)
    near[n + 7] = squareOfO
  }

  /**
   * Whether the whole front lies beyond the plane that touches the last kept part on the side of the point: a nose is not
   * in its own cheek's way.
   */
  private isLastTurnedAway(dx: number, dy: number, dz: number, radius: number): boolean {
    const near = this.near
    const n = PER_NEAR * (this.nearEllipsoidCount - 1)
    const gx = near[n + 3]!
    const gy = near[n + 4]!
    const gz = near[n + 5]!
    return dx * gx + dy * gy + dz * gz + radius * Math.sqrt(gx * gx + gy * gy + gz * gz) <= near[n + 6]!
  }

  /** Share of a small patch, `cell` metres wide around t, that the point of the last `consider` sees, 0-1. */
  visibleShare(tx: number, ty: number, tz: number, cell: number): number {
    const dx = tx - this.px
    const dy = ty - this.py
    const dz = tz - this.pz
    if (this.ownShadow !== null && isInOwnShadow(this.ownShadow, dx, dy, dz)) return 0
    const visible = this.nearEllipsoidCount === 0 ? 1 : this.pastBody(dx, dy, dz, cell)
    return visible === 0 || this.nearPlateCount === 0 ? visible : visible * this.pastPlates(dx, dy, dz, cell)
  }

  private pastBody(dx: number, dy: number, dz: number, cell: number): number {
    let visible = 1
    const e = this.ellipsoids
    const near = this.near
    for (let k = 0; k < this.nearEllipsoidCount; k++) {
      const n = PER_NEAR * k
      // All in the space where the part is the unit sphere: o the point, v the ray.
      const squareOfO = near[n + 7]!
      const ahead = dx * near[n + 3]! + dy * near[n + 4]! + dz * near[n + 5]!
      if (squareOfO < 1) {
        // A place on the skin may lie under the rounded form: it sees what it would see from the form's surface.
        if (ahead > 0) return 0
        continue
      }
      if (ahead <= near[n + 6]!) continue
      const o = this.nearEllipsoids[k]!
      const vx = e[o]! * dx + e[o + 1]! * dy + e[o + 2]! * dz
      const vy = e[o + 3]! * dx + e[o + 4]! * dy + e[o + 5]! * dz
      const vz = e[o + 6]! * dx + e[o + 7]! * dy + e[o + 8]! * dz
      const squareOfV = vx * vx + vy * vy + vz * vz
      const s = ahead >= squareOfV ? 1 : ahead / squareOfV
      const distanceSquared = squareOfO - s * (2 * ahead - s * squareOfV)
      const footprint = cell * s
      const reach = footprint * e[o + 13]!
      if (distanceSquared >= (1 + reach) * (1 + reach)) continue
      const distance = Math.sqrt(Math.max(distanceSquared, 0))
      if (distance <= 1 - reach) return 0
      // How far the distance moves when the ray moves across the patch.
      const qx = near[n]! + s * vx
      const qy = near[n + 1]! + s * vy
      const qz = near[n + 2]! + s * vz
      const gx = e[o]! * qx + e[o + 3]! * qy + e[o + 6]! * qz
      const gy = e[o + 1]! * qx + e[o + 4]! * qy + e[o + 7]! * qz
      const gz = e[o + 2]! * qx + e[o + 5]! * qy + e[o + 8]! * qz
      const spread = (footprint * Math.sqrt(gx * gx + gy * gy + gz * gz)) / distance
      const share = spread > 1e-9 ? 0.5 + (distance - 1) / spread : distance > 1 ? 1 : 0
      if (share <= 0) return 0
      // Parts of one body overlap: the one that hides most decides.
      if (share < visible) visible = share
    }
    return visible
  }

  private pastPlates(dx: number, dy: number, dz: number, cell: number): number {
    let visible = 1
    const p = this.plates
    for (let k = 0; k < this.nearPlateCount; k++) {
      const o = PER_PLATE * this.nearPlates[k]!
      const x = this.px - p[o]!
      const y = this.py - p[o + 1]!
      const z = this.pz - p[o + 2]!
      const height = x * p[o + 3]! + y * p[o + 4]! + z * p[o + 5]!
      const fall = dx * p[o + 3]! + dy * p[o + 4]! + dz * p[o + 5]!
      const s = -height / fall
      if (!(s > 0 && s < 1)) continue
      const ux = dx * p[o + 6]! + dy * p[o + 7]! + dz * p[o + 8]!
      const vx = dx * p[o + 9]! + dy * p[o + 10]! + dz * p[o + 11]!
      const u = x * p[o + 6]! + y * p[o + 7]! + z * p[o + 8]! + s * ux
      const v = x * p[o + 9]! + y * p[o + 10]! + z * p[o + 11]! + s * vx
      const footprint = cell * s
      let hidden: number
      if (p[o + 15] === ROUND) {
        const slant = Math.sqrt(1 + (ux * ux + vx * vx) / (2 * fall * fall))
        hidden = coveredShare(p[o + 12]! - Math.sqrt(u * u + v * v), footprint * slant)
      } else {
        const acrossU = footprint * Math.sqrt(1 + (ux * ux) / (fall * fall))
        hidden = coveredShare(p[o + 12]! - Math.abs(u), acrossU)
        if (hidden > 0) {
          const acrossV = footprint * Math.sqrt(1 + (vx * vx) / (fall * fall))
          hidden *= coveredShare(p[o + 13]! - Math.abs(v), acrossV)
        }
      }
      visible *= 1 - hidden
      if (visible < 1e-6) return 0
    }
    return visible
  }
}

/** Share of a patch `width` wide that lies inside an edge, its middle `inside` metres past it. */
function coveredShare(inside: number, width: number): number {
  if (width < 1e-9) return inside > 0 ? 1 : 0
  const share = 0.5 + inside / width
  return share <= 0 ? 0 : share >= 1 ? 1 : share
}

/** Whether a sphere at c meets the cone from the origin to a disc of `radius` at d. */
function meetsCone(
  cx: number, cy: number, cz: number, dx: number, dy: number, dz: number, lengthSquared: number,
  sphereRadius: number, radius: number,
): boolean {
  const along = (cx * dx + cy * dy + cz * dz) / lengthSquared
  const s = along <= 0 ? 0 : along >= 1 ? 1 : along
  const x = cx - s * dx
  const y = cy - s * dy
  const z = cz - s * dz
  // The sphere may reach past its nearest point of the axis to where the cone is wider.
  const reach = sphereRadius + radius * Math.min(1, s + sphereRadius / Math.sqrt(lengthSquared))
  return x * x + y * y + z * z <= reach * reach
}

function unitSphereForm(part: Ellipsoid): number[] {
  const { axes, semiAxesMetres: semi, centre } = part
  const row = (i: 0 | 1 | 2) => axes[i].map((component) => component / semi[i])
  return [...row(0), ...row(1), ...row(2), ...centre, Math.max(...semi), 1 / Math.min(...semi)]
}

function panelOfFront(emitter: Emitter): Panel {
  return {
    centre: emitter.centre, across: emitter.across, up: emitter.up, normal: emitter.axis,
    halfWidthMetres: emitter.front.widthMetres / 2, halfHeightMetres: emitter.front.heightMetres / 2,
  }
}

function plateForm(panel: Panel, round: number): number[] {
  const { centre, normal, across, up, halfWidthMetres: w, halfHeightMetres: h } = panel
  return [...(centre as Vector), ...normal, ...across, ...up, w, h, round ? w : Math.sqrt(w * w + h * h), round]
}
