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
  /** Of each kept plate, how high above it that `consider` looked from, and how far across and up from its middle. */
  private readonly nearFrom: Float64Array
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
    this.nearFrom = new Float64Array(3 * count)
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
      if (!meetsCone(cx, cy, cz, dx, dy, dz, p[o + 14]!, radius)) continue
      const from = 3 * this.nearCount
      this.nearFrom[from] = pointSide
      this.nearFrom[from + 1] = -(cx * p[o + 6]! + cy * p[o + 7]! + cz * p[o + 8]!)
      this.nearFrom[from + 2] = -(cx * p[o + 9]! + cy * p[o + 10]! + cz * p[o + 11]!)
      this.nearOffsets[this.nearCount++] = o
    }
    return this.nearCount
  }

  /** Share of a patch, `cell` metres wide and d away from where `consider` looked from, that the kept plates leave visible, 0-1. */
  visibleShare(dx: number, dy: number, dz: number, cell: number): number {
    let visible = 1
    const p = this.plates
    const from = this.nearFrom
    for (let k = 0; k < this.nearCount; k++) {
      const o = this.nearOffsets[k]!
      const height = from[3 * k]!
      const fall = dx * p[o + 3]! + dy * p[o + 4]! + dz * p[o + 5]!
      // The plate's plane does not lie between.
      if (height > 0 ? fall >= -height : height === 0 || fall <= -height) continue
      const s = -height / fall
      const slopeU = dx * p[o + 6]! + dy * p[o + 7]! + dz * p[o + 8]!
      const slopeV = dx * p[o + 9]! + dy * p[o + 10]! + dz * p[o + 11]!
      const u = from[3 * k + 1]! + s * slopeU
      const v = from[3 * k + 2]! + s * slopeV
      const footprint = cell * s
      let hidden: number
      if (p[o + 15] === 1) {
        const square = 0.5 * (slopeU * slopeU + slopeV * slopeV)
        hidden = coveredShare(p[o + 12]! - Math.sqrt(u * u + v * v), footprint, square, fall)
      } else {
        hidden = coveredShare(p[o + 12]! - Math.abs(u), footprint, slopeU * slopeU, fall)
        if (hidden > 0) hidden *= coveredShare(p[o + 13]! - Math.abs(v), footprint, slopeV * slopeV, fall)
      }
      visible *= 1 - hidden
      if (visible < 1e-6) return 0
    }
    return visible
  }
}

/**
 * Share of a patch that lies inside an edge, its middle `inside` metres past it. A patch `footprint` wide that is seen at
 * a slant is drawn out on the plate, by the root of 1 + slopeSquare / fall^2.
 */
function coveredShare(inside: number, footprint: number, slopeSquare: number, fall: number): number {
  const square = fall * fall
  const widthSquare = footprint * footprint * (square + slopeSquare)
  // Most patches lie wholly on one side, which needs neither root nor quotient.
  if (4 * inside * inside * square >= widthSquare) return inside > 0 ? 1 : 0
  return 0.5 + inside / Math.sqrt(widthSquare / square)
}

/** A front as something flat in the way; a round one as the square around it. */
export function panelOfFront({ centre, across, up, axis, front }: Emitter): Panel {
  return {
    centre, across, up, normal: axis, halfWidthMetres: front.widthMetres / 2, halfHeightMetres: front.heightMetres / 2,
  }
}
