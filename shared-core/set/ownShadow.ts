import type { Vector } from '../arithmetic/vector.ts'
import { cellOf } from '../subject/asset/octahedron.ts'

/** Where the subject stands in its own light, seen from a place on its skin: one bit a direction, known beforehand. */
export interface OwnShadow {
  /** 1 for blocked; cells of subject/asset/octahedron, 32 a word. */
  readonly words: Uint32Array
  /** Rows of the rotation from the set to the frame in which the directions are kept. */
  readonly toRest: readonly [Vector, Vector, Vector]
}

/** Whether the subject itself is in the way along a direction of any length. */
export function isInOwnShadow({ words, toRest: [a, b, c] }: OwnShadow, x: number, y: number, z: number): boolean {
  const cell = cellOf(a[0] * x + a[1] * y + a[2] * z, b[0] * x + b[1] * y + b[2] * z, c[0] * x + c[1] * y + c[2] * z)
  return ((words[cell >> 5]! >>> (cell & 31)) & 1) === 1
}
