import { z } from 'zod'

/** How a light is fired: the group and channel set on its receiver. By the letter on its tape, for all looks of the job. */
export const triggerSchema = z.strictObject({
  group: z.string().max(8),
  channel: z.string().max(8),
})
export type Trigger = z.infer<typeof triggerSchema>
