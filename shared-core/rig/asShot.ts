import { z } from 'zod'
import { energyJoules, idText, shortText } from '../plan/schema/quantities.ts'
import { writtenBySchema } from './written.ts'

const metres = z.number().min(0).max(100)

/** The numbers of one stand as a tape, a panel and a meter tell them. Null: it has none, or nobody looked. */
export const standNumbersSchema = z.strictObject({
  /** Along the floor from the two marks that its rig sheet names. */
  tapesMetres: z.tuple([metres, metres]),
  /** Centre of the front above the floor. */
  heightMetres: metres,
  /** Front to the place it serves. */
  frontToMetres: metres.nullable(),
  energyJoules: energyJoules.nullable(),
  gelIds: z.array(idText).max(4),
  /** The incident reading of this light alone at the place it serves. */
  readingFNumber: z.number().min(0.1).max(1_000).nullable(),
})
export type StandNumbers = Readonly<z.infer<typeof standNumbersSchema>>

/**
 * One stand of a look as it truly stood at wrap, beside what was planned of it at that moment. Apart from the plan: writing
 * it changes nothing on the board.
 */
export const asShotSchema = z.strictObject({
  lookId: idText,
  standId: idText,
  by: writtenBySchema,
  planned: standNumbersSchema,
  shot: standNumbersSchema,
  note: shortText,
})
export type AsShot = Readonly<z.infer<typeof asShotSchema>>

/** A photograph of a stand at wrap, kept beside the store under its SHA-256. The key is of its own, so that two people's both stay. */
export const standPhotoSchema = z.strictObject({
  lookId: idText,
  standId: idText,
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  by: writtenBySchema,
})
export type StandPhoto = Readonly<z.infer<typeof standPhotoSchema>>

export function asShotKey(lookId: string, standId: string): string {
  return `${lookId}.${standId}`
}
