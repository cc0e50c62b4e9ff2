import { z } from 'zod'
import { coordinateMetres, idText, swatch } from '../plan/schema/quantities.ts'
import { frameShare } from './quantities.ts'

/** Where a person's body lies in rest: the un-posed surface is less than three metres in every direction. */
const restMetres = z.number().min(-3).max(3)

/** A place on the subject's surface as it rests, before pose and camera: so a note rides along with both. */
export const restPlaceSchema = z.strictObject({ xMetres: restMetres, yMetres: restMetres, zMetres: restMetres })
export type RestPlace = z.infer<typeof restPlaceSchema>

/** CIE XYZ under the camera's white, Y = 1 at full scale. */
const tristimulus = z.number().min(-1).max(10_000)

/** What a note hangs on. */
export const pinSchema = z.discriminatedUnion('on', [
  z.strictObject({
    on: z.literal('subject'), place: restPlaceSchema,
    /** The named area nearest to it, for words; null where there is none near. */
    areaId: idText.nullable(),
  }),
  z.strictObject({ on: z.literal('light'), lightId: idText }),
  z.strictObject({ on: z.literal('piece'), pieceId: idText }),
  z.strictObject({ on: z.literal('gel'), gelId: idText, /** The light it hangs on, if one was meant. */ lightId: idText.nullable() }),
  z.strictObject({
    on: z.literal('colour'), areaId: idText,
    /** The colour as it was when the note was written: once it has changed visibly, the note asks to be read again. */
    xyz: z.tuple([tristimulus, tristimulus, tristimulus]), hex: swatch,
  }),
  z.strictObject({ on: z.literal('floor'), xMetres: coordinateMetres, yMetres: coordinateMetres }),
  /** A place in the Frame, for what lies behind the subject. */
  z.strictObject({ on: z.literal('frame'), xShare: frameShare, yShare: frameShare }),
  z.strictObject({ on: z.literal('look') }),
])
export type Pin = z.infer<typeof pinSchema>
