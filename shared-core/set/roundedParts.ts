import { meetsCone } from './cone.ts'
import type { Ellipsoid } from './subjectForm.ts'

/** Numbers a part: the matrix to where it is the unit sphere (9), its middle (3), longest semi-axis, 1 over the shortest. */
const PER_PART = 14
/**
 * Numbers a part that was kept, in the space where it is the unit sphere: where the point lies (3), what a ray is
 * multiplied by to say how far it leads towards the middle (3), how far that must be to pass the plane that touches the
 * part on the point's side (1), and the square of the point's distance (1).
 */
const PER_NEAR = 8

/** The body as something in light's way: ellipsoids as runs of numbers. */
export class RoundedParts {
  private readonly parts: Float64Array
  private readonly partCount: number
  /** Offsets in `parts` of what the last `consider` kept. */
  private readonly nearOffsets: Int32Array
  private readonly near: Float64Array
  private nearCount = 0

  constructor(parts: readonly Ellipsoid[]) {
    this.partCount = parts.length
    this.parts = new Float64Array(PER_PART * parts.length)
    parts.forEach(({ axes, semiAxesMetres: semi, centre }, i) => {
      axes.forEach((axis, k) => axis.forEach((component, c) => {
        this.parts[PER_PART * i + 3 * k + c] = component / semi[k]!
      }))
      this.parts.set([...centre, Math.max(...semi), 1 / Math.min(...semi)], PER_PART * i + 9)
    })
    this.nearOffsets = new Int32Array(parts.length)
    this.near = new Float64Array(PER_NEAR * parts.length)
  }

  /** Keeps the parts that could block between p and a front of `radius` at p + d; returns how many. */
  consider(px: number, py: number, pz: number, dx: number, dy: number, dz: number, radius: number): number {
    this.nearCount = 0
    const parts = this.parts
    for (let i = 0; i < this.partCount; i++) {
      const o = PER_PART * i
      const x = px - parts[o + 9]!
      const y = py - parts[o + 10]!
      const z = pz - parts[o + 11]!
      if (!meetsCone(-x, -y, -z, dx, dy, dz, parts[o + 12]!, radius)) continue
      this.keep(o, x, y, z)
      if (!this.isBeyond(dx, dy, dz, radius)) this.nearCount++
    }
    return this.nearCount
  }


  /** Writes what is known of a part, seen from x, y, z off its middle, after those already kept. */
  private keep(o: number, x: number, y: number, z: number): void {
    const e = this.parts
    const ox = e[o]! * x + e[o + 1]! * y + e[o + 2]! * z
    const oy = e[o + 3]! * x + e[o + 4]! * y + e[o + 5]! * z
    const oz = e[o + 6]! * x + e[o + 7]! * y + e[o + 8]! * z
    const squareOfO = ox * ox + oy * oy + oz * oz
    this.nearOffsets[this.nearCount] = o
    const near = this.near
    const n = PER_NEAR * this.nearCount
    near[n] = ox
    near[n + 1] = oy
    near[n + 2] = oz
    near[n + 3] = -(e[o]! * ox + e[o + 3]! * oy + e[o + 6]! * oz)
    near[n + 4] = -(e[o + 1]! * ox + e[o + 4]! * oy + e[o + 7]! * oz)
    near[n + 5] = -(e[o + 2]! * ox + e[o + 5]! * oy + e[o + 8]! * oz)
    near[n + 6] = squareOfO - Math.sqrt(squareOfO)
    near[n + 7] = squareOfO
  }

  /**
   * Whether the whole front lies beyond the plane that touches the part just written, on the point's side of it: a head is
   * not in its own cheek's way.
   */
  private isBeyond(dx: number, dy: number, dz: number, radius: number): boolean {
    const near = this.near
    const n = PER_NEAR * this.nearCount
    const gx = near[n + 3]!
    const gy = near[n + 4]!
    const gz = near[n + 5]!
    return dx * gx + dy * gy + dz * gz + radius * Math.sqrt(gx * gx + gy * gy + gz * gz) <= near[n + 6]!
  }

  /** Share of a patch, `cell` metres wide at p + d, that the kept parts leave visible, 0-1. */
  visibleShare(dx: number, dy: number, dz: number, cell: number): number {
    let visible = 1
    const e = this.parts
    const near = this.near
    for (let k = 0; k < this.nearCount; k++) {
      const n = PER_NEAR * k
      // In the space where the part is the unit sphere, o is the point and v the ray.
      const squareOfO = near[n + 7]!
      const ahead = dx * near[n + 3]! + dy * near[n + 4]! + dz * near[n + 5]!
      if (squareOfO < 1) {
        // A place on the skin may lie under the rounded form: it sees what it would see from the form's surface.
        if (ahead > 0) return 0
        continue
      }
      if (ahead <= near[n + 6]!) continue
      const o = this.nearOffsets[k]!
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
}
