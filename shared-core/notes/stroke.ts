import { z } from 'zod'
import { swatch } from '../plan/schema/quantities.ts'
import { NOTES_LIMITS } from './limits.ts'
import { restPlaceSchema } from './pin.ts'
import { frameShare } from './quantities.ts'

const framePoint = z.tuple([frameShare, frameShare])

/** A drawn line as a grease pencil leaves it: in the Frame, or on the subject's surface at rest, where it rides along. */
export const lineSchema = z.discriminatedUnion('on', [
  z.strictObject({ on: z.literal('frame'), points: z.array(framePoint).min(1).max(NOTES_LIMITS.pointsPerStroke) }),
  z.strictObject({ on: z.literal('surface'), points: z.array(restPlaceSchema).min(1).max(NOTES_LIMITS.pointsPerStroke) }),
])
export type Line = z.infer<typeof lineSchema>

export const strokeShape = {
  line: lineSchema,
  colour: swatch,
  /** Of the Frame's height. */
  widthShare: z.number().min(0.001).max(0.05),
} as const
