import { cellOf } from '../subject/asset/octahedron.ts'
import { WORDS } from '../subject/asset/selfShadow.ts'
import type { SeenSurface } from './seenSurface.ts'
import type { TurnedPoints } from './turnedPoints.ts'

/** The middle and the corners of a region. */
const PLACES = [[0, 0, 0], [-1, -1, -1], [1, -1, -1], [-1, 1, -1], [1, 1, -1], [-1, -1, 1], [1, -1, 1], [-1, 1, 1], [1, 1, 1]] as const
const MIDDLE = [PLACES[0]] as const

/**
 * The directions in which a shine can lie from within a region of the subject, as words of the subject's own shadow: a
 * vertex none of whose shadow falls into them sees all of the shine, and need not ask for each point.
 */
export class ShineMasks {
  private readonly masks: (ShineMask | undefined)[]

  constructor(private readonly seen: SeenSurface, private readonly frames: readonly (TurnedPoints | null)[]) {
    this.masks = new Array<ShineMask | undefined>(seen.regions.length)
  }

  of(region: number): ShineMask {
    return (this.masks[region] ??= this.make(region))
  }

  private make(region: number): ShineMask {
    const { step, middle, halfMetres } = this.seen.regions[region]!
    const { xyz } = this.frames[step]!
    const mask = new Uint32Array(WORDS)
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
    const words: number[] = []
    for (let w = 0; w < WORDS; w++) if (mask[w] !== 0) words.push(w)
    return { words: Uint8Array.from(words), bits: Uint32Array.from(words, (w) => mask[w]!) }
  }
}

/** The words that hold any of the directions, and which of their bits. */
export interface ShineMask {
  readonly words: Uint8Array
  readonly bits: Uint32Array
}
