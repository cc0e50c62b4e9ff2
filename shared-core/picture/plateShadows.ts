import type { Vector } from '../arithmetic/vector.ts'
import { standsBetween, type Plate, type PlatesBetween } from './platesBetween.ts'
import type { Shine } from './shine.ts'

/** Most corners a plate can have once it is cut at two planes. */
const MOST_CORNERS = 26
/** Three numbers an edge: its inward normal and offset on the shine's plane. */
const PER_EDGE = 3

/**
 * Shadows that flat things cast on one shine, as seen from a point: each plate is thrown onto the shine's plane, where
 * it covers some of the fixed points. Edges are soft by a cell's width, so that few points suffice.
 */
export class PlateShadows {
  private readonly plates: readonly Plate[]
  /** Place of each fixed point on the shine's plane. */
  private readonly us: Float64Array
  private readonly vs: Float64Array
  private readonly across: Vector
  private readonly up: Vector
  private readonly edges: Float64Array
  /** Edges of each plate that was thrown, one after another. */
  private readonly edgeCounts: Int32Array
  private thrown = 0
  /** For each region of the subject, the plates that can shade any of it. */
  private readonly near: (readonly Plate[] | undefined)[] = []
  private readonly cut: [Float64Array, Float64Array] = [new Float64Array(3 * MOST_CORNERS), new Float64Array(3 * MOST_CORNERS)]

  constructor(between: PlatesBetween, private readonly shine: Shine) {
    const { points } = shine
    this.plates = between.plates
    ;[this.across, this.up] = axesOn(shine.axis)
    this.us = new Float64Array(points.count)
    this.vs = new Float64Array(points.count)
    for (let k = 0; k < points.count; k++) {
      const [x, y, z] = [0, 1, 2].map((i) => points.xyz[3 * k + i]! - shine.centre[i]!) as [number, number, number]
      this.us[k] = x * this.across[0] + y * this.across[1] + z * this.across[2]
      this.vs[k] = x * this.up[0] + y * this.up[1] + z * this.up[2]
    }
    this.edges = new Float64Array(PER_EDGE * MOST_CORNERS * Math.max(1, this.plates.length))
    this.edgeCounts = new Int32Array(this.plates.length)
  }

  /**
   * Throws the plates' shadows as seen from a point before the shine; false when none falls on it.
   * @param region that the point lies in: all its points lie within `regionMetres` of each other
   */
  from(px: number, py: number, pz: number, region: number, regionMetres: number): boolean {
    const { axis, centre, radiusMetres } = this.shine
    const near = (this.near[region] ??= this.platesNear(px, py, pz, regionMetres))
    if (near.length === 0) return false
    const height = (px - centre[0]) * axis[0] + (py - centre[1]) * axis[1] + (pz - centre[2]) * axis[2]
    this.thrown = 0
    let edge = 0
    for (const plate of near) {
      const count = this.cutBetween(plate.corners, height)
      if (count < 3) continue
      const added = this.throwOnto(count, px, py, pz, height, edge, radiusMetres + this.shine.points.cellMetres)
      if (added === 0) continue
      this.edgeCounts[this.thrown++] = added
      edge += added
    }
    return this.thrown > 0
  }

  private platesNear(px: number, py: number, pz: number, radiusMetres: number): readonly Plate[] {
    return this.plates.filter((plate) => standsBetween(plate, this.shine, { centre: [px, py, pz], radiusMetres }))
  }

  /** Share of a fixed point's cell that is left to see, 0-1. */
  share(k: number): number {
    const u = this.us[k]!
    const v = this.vs[k]!
    const { edges, edgeCounts, shine: { points: { cellMetres } } } = this
    let visible = 1
    for (let plate = 0, at = 0; plate < this.thrown; plate++) {
      let inside = Infinity
      for (let e = 0; e < edgeCounts[plate]!; e++, at += PER_EDGE) {
        const distance = edges[at]! * u + edges[at + 1]! * v + edges[at + 2]!
        if (distance < inside) inside = distance
      }
      const covered = 0.5 + inside / cellMetres
      if (covered >= 1) return 0
      if (covered > 0) visible *= 1 - covered
    }
    return visible
  }

  /** Leaves of a plate what lies between the shine's plane and the point's own: into `cut[0]`; returns how many corners. */
  private cutBetween(plate: Float64Array, height: number): number {
    const count = this.cutAt(plate, plate.length / 3, this.cut[1], 1e-4, 1)
    return count < 3 ? 0 : this.cutAt(this.cut[1], count, this.cut[0], height - 1e-4, -1)
  }

  /** Sutherland and Hodgman's cut of a polygon at a height over the shine's plane; keeps what is above (1) or below (-1). */
  private cutAt(from: Float64Array, count: number, to: Float64Array, level: number, side: 1 | -1): number {
    const { axis, centre } = this.shine
    let kept = 0
    let b = 3 * (count - 1)
    let heightB = side * (heightOf(from, b, axis, centre) - level)
    for (let i = 0; i < count; i++) {
      const a = 3 * i
      const heightA = side * (heightOf(from, a, axis, centre) - level)
      if (heightA > 0 !== heightB > 0) {
        const share = heightB / (heightB - heightA)
        for (let k = 0; k < 3; k++) to[3 * kept + k] = from[b + k]! + share * (from[a + k]! - from[b + k]!)
        kept++
      }
      if (heightA > 0) {
        for (let k = 0; k < 3; k++) to[3 * kept + k] = from[a + k]!
        kept++
      }
      b = a
      heightB = heightA
    }
    return kept
  }

  /** Edges of the cut plate's shadow on the plane, from `first` on; 0 when it falls wide of the shine. */
  private throwOnto(count: number, px: number, py: number, pz: number, height: number, first: number, reach: number): number {
    const { axis, centre } = this.shine
    const { across, up, edges } = this
    const [corners, shadow] = this.cut
    let lowU = Infinity
    let highU = -Infinity
    let lowV = Infinity
    let highV = -Infinity
    for (let i = 0; i < count; i++) {
      const along = height / (height - heightOf(corners, 3 * i, axis, centre))
      const x = px + along * (corners[3 * i]! - px) - centre[0]
      const y = py + along * (corners[3 * i + 1]! - py) - centre[1]
      const z = pz + along * (corners[3 * i + 2]! - pz) - centre[2]
      const u = x * across[0] + y * across[1] + z * across[2]
      const v = x * up[0] + y * up[1] + z * up[2]
      shadow[2 * i] = u
      shadow[2 * i + 1] = v
      if (u < lowU) lowU = u
      if (u > highU) highU = u
      if (v < lowV) lowV = v
      if (v > highV) highV = v
    }
    if (lowU > reach || highU < -reach || lowV > reach || highV < -reach) return 0
    let area = 0
    for (let i = 0, j = count - 1; i < count; j = i++) area += shadow[2 * j]! * shadow[2 * i + 1]! - shadow[2 * i]! * shadow[2 * j + 1]!
    const turn = area < 0 ? -1 : 1
    for (let i = 0, j = count - 1; i < count; j = i++) {
      const du = shadow[2 * i]! - shadow[2 * j]!
      const dv = shadow[2 * i + 1]! - shadow[2 * j + 1]!
      const size = turn / Math.max(1e-12, Math.sqrt(du * du + dv * dv))
      const at = PER_EDGE * (first + i)
      edges[at] = -dv * size
      edges[at + 1] = du * size
      edges[at + 2] = (dv * shadow[2 * j]! - du * shadow[2 * j + 1]!) * size
    }
    return count
  }
}

function heightOf(corners: Float64Array, at: number, axis: Vector, centre: Vector): number {
  return (corners[at]! - centre[0]) * axis[0] + (corners[at + 1]! - centre[1]) * axis[1] + (corners[at + 2]! - centre[2]) * axis[2]
}

/** Two directions on a plane, at right angles. */
function axesOn([x, y, z]: Vector): readonly [Vector, Vector] {
  const size = Math.sqrt(x * x + y * y)
  const across: Vector = size < 1e-6 ? [1, 0, 0] : [y / size, -x / size, 0]
  return [across, [across[1] * z - across[2] * y, across[2] * x - across[0] * z, across[0] * y - across[1] * x]]
}
