import type { Xyz } from '../../shared-core/colour/triples.ts'

/** Chromaticity (x, y) of a tristimulus (CIE 15). */
export function chromaticityOf([X, Y, Z]: Xyz): { x: number; y: number } {
  return { x: X / (X + Y + Z), y: Y / (X + Y + Z) }
}
