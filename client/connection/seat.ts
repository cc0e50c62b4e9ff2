import { z } from 'zod'

export const roleSchema = z.enum(['photographer', 'assistant', 'client'])

/** One's place at a job, as the relay gave it. */
export const seatInfoSchema = z.object({
  seatId: z.string().min(1).max(64),
  jobId: z.string().min(1).max(64),
  role: roleSchema,
  name: z.string().max(120),
})
export type SeatInfo = z.infer<typeof seatInfoSchema>
