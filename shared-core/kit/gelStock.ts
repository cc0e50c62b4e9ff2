import type { Plan } from '../plan/schema/plan.ts'
import type { GelSheet } from '../rig/sheets.ts'
import type { Stock } from './packing/packSheets.ts'

/** Rolls are sold so (common practice, no source). */
export const ROLL_WIDTH_MILLIMETRES = 1_220
export const ROLL_LENGTH_MILLIMETRES = 7_620

export interface GelStock extends Stock {
  readonly batch: string
  readonly hoursUsed: number
  readonly isOwned: boolean
}

/**
 * What there is of a gel: its real sheets, offcuts and rolls, or, while nobody entered any, as many whole sheets as the
 * plan counts. Pieces before sheets before rolls, the smallest first, so that offcuts are used up.
 */
export function stockOf(plan: Plan, gelId: string, sheets: Readonly<Record<string, GelSheet>>): readonly GelStock[] {
  const real = Object.entries(sheets).filter(([, sheet]) => sheet.gelId === gelId).map(([id, sheet]): GelStock => ({
    id, width: whole(sheet.widthMetres), height: whole(sheet.heightMetres), isRoll: sheet.form === 'roll',
    batch: sheet.batch, hoursUsed: sheet.hoursUsed, isOwned: true,
  }))
  const counted = Array.from({ length: plan.gels[gelId]?.sheets ?? 0 }, (_, index): GelStock => ({
    ...newSheet(plan, gelId), id: `counted.${index + 1}`, batch: plan.gels[gelId]!.batch, isOwned: true,
  }))
  return (real.length > 0 ? real : counted).sort((a, b) =>
    Number(a.isRoll) - Number(b.isRoll) || a.width * a.height - b.width * b.height || (a.id < b.id ? -1 : 1))
}

/** One uncut sheet of the plan's size, to be bought. */
export function newSheet(plan: Plan, gelId: string): GelStock {
  const gel = plan.gels[gelId]!
  return {
    id: 'new', width: whole(gel.sheetWidthMetres), height: whole(gel.sheetHeightMetres), isRoll: false,
    batch: '', hoursUsed: 0, isOwned: false,
  }
}

export function newRoll(): GelStock {
  return {
    id: 'new-roll', width: ROLL_WIDTH_MILLIMETRES, height: ROLL_LENGTH_MILLIMETRES, isRoll: true,
    batch: '', hoursUsed: 0, isOwned: false,
  }
}

const whole = (metres: number): number => Math.round(metres * 1_000)
