import { z } from 'zod'

/** Who wrote an entry and when, by the clock of that person's device. The set is built by people who trust each other: nothing here is a signature. */
export const writtenBySchema = z.strictObject({
  name: z.string().min(1).max(120),
  /** Milliseconds since 1970. */
  atMs: z.number().int().min(0).max(8_640_000_000_000_000),
})
export type WrittenBy = z.infer<typeof writtenBySchema>
