import type { Modifier, ModifierKind } from '../plan/schema/kit.ts'
import type { Light } from '../plan/schema/look.ts'
import { leastCut } from '../predict/gelOpening.ts'

/** A cut in whole millimetres, the longer side first: cut and sheet may be turned against each other. */
export interface CutSize {
  readonly longMillimetres: number
  readonly shortMillimetres: number
}

/** Cuts are made to the next five centimetres, so that one serves several lights; 25 × 25 over a reflector, 30 × 30 at the ring of a box (common practice, no source). */
const CUT_STEP_MILLIMETRES = 50
const AT_RING_MILLIMETRES = 300
const boxes: readonly ModifierKind[] = ['softbox', 'octa', 'strip']

/** The cut that this gel place on this modifier usually gets: at least the opening with its margin. */
export function usualCut(modifier: Modifier | undefined, gelPlace: Light['gelPlace']): CutSize {
  const least = leastMillimetres(modifier, gelPlace)
  const atRing = gelPlace === 'at-the-head' && modifier !== undefined && boxes.includes(modifier.kind) ? AT_RING_MILLIMETRES : 0
  const [one, other] = [least.longMillimetres, least.shortMillimetres].map((side) => Math.max(roundedUp(side), atRing)) as [number, number]
  return { longMillimetres: one, shortMillimetres: other }
}

/** The smallest that still covers, in whole millimetres; what the sheet checks of a look ask for. */
export function leastMillimetres(modifier: Modifier | undefined, gelPlace: Light['gelPlace']): CutSize {
  const { widthMetres, heightMetres } = leastCut(modifier, gelPlace)
  return sizeOf(widthMetres, heightMetres)
}

export function sizeOf(widthMetres: number, heightMetres: number): CutSize {
  const sides = [widthMetres, heightMetres].map((metres) => Math.round(metres * 1_000)) as [number, number]
  return { longMillimetres: Math.max(...sides), shortMillimetres: Math.min(...sides) }
}

/** Whether the one lies wholly on the other, turned or not. */
export function isCoveredBy(size: CutSize, sheet: CutSize): boolean {
  return size.longMillimetres <= sheet.longMillimetres && size.shortMillimetres <= sheet.shortMillimetres
}

function roundedUp(millimetres: number): number {
  return Math.ceil(millimetres / CUT_STEP_MILLIMETRES) * CUT_STEP_MILLIMETRES
}
