import { cellOf } from '../subject/asset/octahedron.ts'
import { WORDS } from '../subject/asset/selfShadow.ts'
import type { SeenSurface } from './seenSurface.ts'
import type { TurnedPoints } from './turnedPoints.ts'

/** The middle and the corners of a region. */
const PLACES = [[0, 0, 0], [-1, -1, -1], [1, -1, -1], [-1, 1, -1], [1, 1, -1], [-1, -1, 1], [1, -1, 1], [-1, 1, 1], [1, 1, 1]] as const
const MIDDLE = [PLACES[0]] as const

const NOT_MADE = -1

/**
 * The directions in which a shine can lie from within a region of the subject, as words of the subject's own shadow: a
 * vertex none of whose shadow falls into them sees all of the shine, and need not ask for each point.
 */
export class ShineMasks {
  /** From WORDS times region on: the words that hold any of the directions, and which of their bits. */
  readonly words: Uint8Array
  readonly bits: Uint32Array
  private readonly counts: Int8Array
  private readonly mask = new Uint32Array(WORDS)

  constructor(private readonly seen: SeenSurface, private readonly frames: readonly (TurnedPoints | null)[]) {
    const regions = seen.regions.length
    this.words = new Uint8Array(WORDS * regions)
    this.bits = new Uint32Array(WORDS * regions)
    this.counts = new Int8Array(regions).fill(NOT_MADE)
  }

  /** How many words a region has; made when first asked for. */
  countOf(region: number): number {
    if (this.counts[region] === NOT_MADE) this.counts[region] = this.make(region)
    return this.counts[region]!
  }

  private make(region: number): number {
    const { step, middle, halfMetres } = this.seen.regions[region]!
    const { xyz } = this.frames[step]!
    const { mask, words, bits } = this
    mask.fill(0)
    // A region without size, a facet of its own, is far smaller than a cell of directions: its middle is enough.
    for (const [a, b, c] of halfMetres === 0 ? MIDDLE : PLACES) {
      // Cells are wider than two points lie apart, so the corners need only every second.
      const stride = a === 0 ? 3 : 6
      const x = middle[0] + a * halfMetres
      const y = middle[1] + b * halfMetres
      const z = middle[2] + c * halfMetres
      for (let k = 0; k < xyz.length; k += stride) {
        const cell = cellOf(xyz[k]! - x, xyz[k + 1]! - y, xyz[k + 2]! - z)
        mask[cell >> 5] = mask[cell >> 5]! | (1 << (cell & 31))
      }
    }
    let at = WORDS * region
    for (let w = 0; w < WORDS; w++) {
      if (mask[w] === 0) continue
      words[at] = w
      bits[at++] = mask[w]!
    }
    return at - WORDS * region
  }
}
