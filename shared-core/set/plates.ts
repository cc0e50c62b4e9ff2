import type { Emitter } from './emitter.ts'
import { meetsCone } from './cone.ts'
import type { Panel } from './panels.ts'

/** Numbers a plate: middle, normal, across, up (3 each), half width, half height, radius, and 1 for a round one. */
const PER_PLATE = 16
/** Owner of what belongs to no light. */
export const NOBODY = -1

/** The front of a light, in the way of other lights. */
export interface OwnedFront {
  /** Index of the light that it belongs to and does not block. */
  readonly owner: number
  readonly emitter: Emitter
}

/** Flat things in light's way: paper, pieces, columns, and the fronts of lights, as runs of numbers. */
export class Plates {
  private readonly plates: Float64Array
  private readonly owners: Int32Array
  /** Offsets in `plates` of what the last `consider` kept. */
  private readonly nearOffsets: Int32Array
  private nearCount = 0

  constructor(panels: readonly Panel[], fronts: readonly OwnedFront[]) {
    const count = panels.length + fronts.length
    this.plates = new Float64Array(PER_PLATE * count)
    this.owners = new Int32Array(count).fill(NOBODY)
    panels.forEach((panel, i) => this.write(i, panel, false))
    fronts.forEach(({ owner, emitter }, k) => {
      this.write(panels.length + k, panelOfFront(emitter), emitter.front.shape !== 'rectangle')
      this.owners[panels.length + k] = owner
    })
    this.nearOffsets = new Int32Array(count)
  }

  private write(i: number, panel: Panel, isRound: boolean): void {
    const { centre, normal, across, up, halfWidthMetres: w, halfHeightMetres: h } = panel
    const radius = isRound ? w : Math.sqrt(w * w + h * h)
    this.plates.set([...centre, ...normal, ...across, ...up, w, h, radius, isRound ? 1 : 0], PER_PLATE * i)
  }

  /** Keeps the plates that could block between p and a front of `radius` at p + d; returns how many. */
  consider(
    px: number, py: number, pz: number, dx: number, dy: number, dz: number, radius: number, owner: number,
  ): number {
    this.nearCount = 0
    const p = this.plates
    for (let i = 0; i < this.owners.length; i++) {
      if (owner !== NOBODY && this.owners[i] === owner) continue
      const o = PER_PLATE * i
      const cx = p[o]! - px
      const cy = p[o + 1]! - py
      const cz = p[o + 2]! - pz
      const nx = p[o + 3]!
      const ny = p[o + 4]!
      const nz = p[o + 5]!
      const pointSide = -(cx * nx + cy * ny + cz * nz)
      const frontSide = pointSide + dx * nx + dy * ny + dz * nz
      if (pointSide > 0 ? frontSide >= radius : frontSide <= -radius) continue
      if (meetsCone(cx, cy, cz, dx, dy, dz, p[o + 14]!, radius)) this.nearOffsets[this.nearCount++] = o
    }
    return this.nearCount
  }

  /** Share of a patch, `cell` metres wide at p + d, that the kept plates leave visible, 0-1. */
  visibleShare(px: number, py: number, pz: number, dx: number, dy: number, dz: number, cell: number): number {
    let visible = 1
    const p = this.plates
    for (let k = 0; k < this.nearCount; k++) {
      const o = this.nearOffsets[k]!
      const x = px - p[o]!
      const y = py - p[o + 1]!
      const z = pz - p[o + 2]!
      const height = x * p[o + 3]! + y * p[o + 4]! + z * p[o + 5]!
      const fall = dx * p[o + 3]! + dy * p[o + 4]! + dz * p[o + 5]!
      const s = -height / fall
      if (!(s > 0 && s < 1)) continue
      const slopeU = dx * p[o + 6]! + dy * p[o + 7]! + dz * p[o + 8]!
      const slopeV = dx * p[o + 9]! + dy * p[o + 10]! + dz * p[o + 11]!
      const u = x * p[o + 6]! + y * p[o + 7]! + z * p[o + 8]! + s * slopeU
      const v = x * p[o + 9]! + y * p[o + 10]! + z * p[o + 11]! + s * slopeV
      // A patch seen at a slant is drawn out on the plate.
      const footprint = cell * s
      const square = fall * fall
      let hidden: number
      if (p[o + 15] === 1) {
        const slant = Math.sqrt(1 + (slopeU * slopeU + slopeV * slopeV) / (2 * square))
        hidden = coveredShare(p[o + 12]! - Math.sqrt(u * u + v * v), footprint * slant)
      } else {
        hidden = coveredShare(p[o + 12]! - Math.abs(u), footprint * Math.sqrt(1 + (slopeU * slopeU) / square))
        if (hidden > 0) {
          hidden *= coveredShare(p[o + 13]! - Math.abs(v), footprint * Math.sqrt(1 + (slopeV * slopeV) / square))
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

/** A front as something flat in the way; a round one as the square around it. */
export function panelOfFront({ centre, across, up, axis, front }: Emitter): Panel {
  return {
    centre, across, up, normal: axis, halfWidthMetres: front.widthMetres / 2, halfHeightMetres: front.heightMetres / 2,
  }
}
