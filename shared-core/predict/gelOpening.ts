import type { Modifier } from '../plan/schema/kit.ts'
import type { Light } from '../plan/schema/look.ts'

/** A cut covers the opening and this much more on every side (common practice, no source). */
export const CUT_MARGIN_METRES = 0.02
/** Opening of a usual head, where a gel at the head sits (common practice, no source). */
const HEAD_OPENING_METRES = 0.18

/** Of dense gel: what it loses turns to heat in it (common practice, no source). */
export const DENSE_GEL_METER_LOSS_STOPS = 2

export interface GelSize {
  readonly widthMetres: number
  readonly heightMetres: number
}

/** The least a cut must measure to cover its opening with the margin on every side. Without a modifier: the bare head. */
export function leastCut(modifier: Modifier | undefined, gelPlace: Light['gelPlace']): GelSize {
  const isAtHead = gelPlace === 'at-the-head' || !modifier
  return {
    widthMetres: (isAtHead ? HEAD_OPENING_METRES : modifier.widthMetres) + 2 * CUT_MARGIN_METRES,
    heightMetres: (isAtHead ? HEAD_OPENING_METRES : modifier.heightMetres) + 2 * CUT_MARGIN_METRES,
  }
}

/** Sizes are told apart to a tenth of a millimetre: sums of metres miss by less. */
const STEPS_PER_METRE = 10_000

/** By how much a sheet is short of a cut on its worse side, the better way round; not above 0: it covers. Metres. */
export function shortOf(cut: GelSize, sheet: GelSize): number {
  const straight = Math.max(cut.widthMetres - sheet.widthMetres, cut.heightMetres - sheet.heightMetres)
  const turned = Math.max(cut.widthMetres - sheet.heightMetres, cut.heightMetres - sheet.widthMetres)
  return Math.round(Math.min(straight, turned) * STEPS_PER_METRE) / STEPS_PER_METRE
}
