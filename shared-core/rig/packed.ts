import { z } from 'zod'
import { writtenBySchema } from './written.ts'

/** How many of one line of the order list are in their case. The entry's key is the line's. */
export const packedSchema = z.strictObject({
  count: z.number().int().min(0).max(9_999),
  by: writtenBySchema,
})
export type Packed = z.infer<typeof packedSchema>
