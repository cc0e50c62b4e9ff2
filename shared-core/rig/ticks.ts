import { z } from 'zod'
import { lightSchema, pieceSchema } from '../plan/schema/look.ts'
import { coordinateMetres, idText, placeSchema } from '../plan/schema/quantities.ts'
import { writtenBySchema } from './written.ts'

/**
 * "Done": one stand of a look was built as the plan had it at that moment. The stand is kept with the tick, so that a
 * later change of the plan can be said in words on the stand that it touches.
 */
export const tickSchema = z.strictObject({
  lookId: idText,
  by: writtenBySchema,
  /** Where the subject's mark was: distances are taped from it. */
  subjectXMetres: coordinateMetres,
  subjectYMetres: coordinateMetres,
  stand: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('light'), id: idText, as: lightSchema }),
    z.strictObject({ kind: z.literal('piece'), id: idText, as: pieceSchema }),
    /** The marks on the floor, the camera and the backdrop, which all else is taped from. */
    z.strictObject({ kind: z.literal('marks'), id: z.literal('marks'), as: z.strictObject({ camera: placeSchema, backdropYMetres: coordinateMetres }) }),
  ]),
})
export type Tick = z.infer<typeof tickSchema>

/** A tick's key: a stand is ticked for one look, and again for the next. */
export function tickKey(lookId: string, standId: string): string {
  return `${lookId}.${standId}`
}
