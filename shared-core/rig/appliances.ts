import { z } from 'zod'
import { shortText } from '../plan/schema/quantities.ts'

/** What hangs on the studio's circuits besides the heads: steamer, dryer, kettle, tether station. */
export const applianceSchema = z.strictObject({
  name: shortText,
  watts: z.number().min(1).max(20_000),
  /** The circuit of the room it is plugged into; empty while nobody has said. */
  circuitId: z.string().max(40),
  on: z.boolean(),
  /** It wants a circuit on which no head recycles. */
  apart: z.boolean(),
})
export type Appliance = z.infer<typeof applianceSchema>
