import { z } from 'zod'
import { idText, shortText, sizeMetres } from '../plan/schema/quantities.ts'

/**
 * One real sheet, offcut or roll in the gel drawer, as it is now. While a gel has none, the plan's count of whole sheets
 * stands for what there is.
 */
export const gelSheetSchema = z.strictObject({
  gelId: idText,
  form: z.enum(['sheet', 'roll']),
  /** Of what is left. A roll's height is the length still on it. */
  widthMetres: sizeMetres,
  heightMetres: sizeMetres,
  batch: shortText,
  /** In use on a head, by all looks so far: dense sheets bleach. */
  hoursUsed: z.number().min(0).max(10_000),
})
export type GelSheet = z.infer<typeof gelSheetSchema>
