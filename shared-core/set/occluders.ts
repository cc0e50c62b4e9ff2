import type { Vector } from '../arithmetic/vector.ts'
import { isInOwnShadow, type OwnShadow } from './ownShadow.ts'
import type { Panel } from './panels.ts'
import { NOBODY, type OwnedFront, Plates } from './plates.ts'
import { RoundedParts } from './roundedParts.ts'
import type { Ellipsoid } from './subjectForm.ts'

export { NOBODY }

/**
 * What stands in light's way. Every fixed point of every light asks here, so one first says from where and whereto
 * (`consider`), and then asks for each point of the front (`visibleShare`).
 *
 * Edges are soft by the width of the patch of front that a fixed point stands for, so that a shadow moves smoothly as
 * a light is dragged, and few points suffice.
 */
export class Occluders {
  private readonly body: RoundedParts
  private readonly plates: Plates
  private bodyCount = 0
  private plateCount = 0
  private ownShadow: OwnShadow | null = null
  private px = 0
  private py = 0
  private pz = 0

  /** @param fronts of lights, each in the way of all lights but its own */
  constructor(parts: readonly Ellipsoid[], panels: readonly Panel[], fronts: readonly OwnedFront[]) {
    this.body = new RoundedParts(parts)
    this.plates = new Plates(panels, fronts)
  }

  /**
   * Looks from now on from a place on the subject's own skin, whose shadow on itself is known beforehand: the rounded
   * parts, which the place may lie inside of, do not count then. Null looks from the air again.
   */
  standOn(ownShadow: OwnShadow | null): void {
    this.ownShadow = ownShadow
  }

  /**
   * Keeps for `visibleShare` only what could block between the point p and a front of `radius` around e.
   *
   * @param owner light whose own fronts do not block it, or `NOBODY`
   * @returns 0 when nothing can block
   */
  consider(
    px: number, py: number, pz: number, ex: number, ey: number, ez: number, radius: number, owner: number,
  ): number {
    this.px = px
    this.py = py
    this.pz = pz
    const dx = ex - px
    const dy = ey - py
    const dz = ez - pz
    this.bodyCount = this.ownShadow === null ? this.body.consider(px, py, pz, dx, dy, dz, radius) : 0
    this.plateCount = this.plates.consider(px, py, pz, dx, dy, dz, radius, owner)
    return this.bodyCount + this.plateCount + (this.ownShadow === null ? 0 : 1)
  }

  /** Share of a small patch, `cell` metres wide around t, that the point of the last `consider` sees, 0-1. */
  visibleShare(tx: number, ty: number, tz: number, cell: number): number {
    const dx = tx - this.px
    const dy = ty - this.py
    const dz = tz - this.pz
    if (this.ownShadow !== null && isInOwnShadow(this.ownShadow, dx, dy, dz)) return 0
    const pastBody = this.bodyCount === 0 ? 1 : this.body.visibleShare(dx, dy, dz, cell)
    if (pastBody === 0 || this.plateCount === 0) return pastBody
    return pastBody * this.plates.visibleShare(dx, dy, dz, cell)
  }

  /** Share of a small patch, `cell` metres wide around `to`, that a single sight from `from` meets, 0-1. */
  shareSeen(from: Vector, to: Vector, cell: number): number {
    const kept = this.consider(...from, ...to, cell, NOBODY)
    return kept === 0 ? 1 : this.visibleShare(...to, cell)
  }
}
