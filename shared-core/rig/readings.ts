import { z } from 'zod'
import { energyJoules, idText, shortText, stops } from '../plan/schema/quantities.ts'
import { writtenBySchema } from './written.ts'

/** A head, modifier or sheet of the kit, such as `gel:violet`: what the meter can teach something of. */
export const pieceKeyText = z.string().regex(/^(?:head|modifier|gel):[A-Za-z0-9_-]{1,40}$/)

const luxSeconds = z.number().min(0).max(1e9)

/** A light that fired: what it was made of, and what it was predicted to give at the meter with nothing learned. */
export const firedLightSchema = z.strictObject({
  lightId: idText,
  letter: z.string().min(1).max(2),
  energyJoules,
  headId: idText,
  modifierId: idText,
  gelIds: z.array(idText).max(4),
  luxSeconds,
})
export type FiredPart = Readonly<z.infer<typeof firedLightSchema>>

/** At the light's front, at the camera, or held against a lit cloth and facing it. */
export const pointings = ['light', 'camera', 'cloth'] as const
export type Pointed = (typeof pointings)[number]

/**
 * One reading of an incident meter, with the facts it was made under, so that it still teaches after the plan has moved.
 * Whoever accepts or withdraws it sets the entry anew.
 */
export const readingSchema = z.strictObject({
  lookId: idText,
  areaId: z.string().min(1).max(40),
  receptor: z.enum(['dome', 'flat']),
  pointed: z.enum(pointings),
  isoSpeed: z.number().min(6).max(819_200),
  /** The meter's constant C for that receptor. */
  constant: z.number().min(100).max(1_000),
  /** As read. */
  fNumber: z.number().min(0.1).max(1_000),
  /** In the reader's own words. */
  said: shortText,
  /** What was wanted there; null where nobody had said. */
  wantedFNumber: z.number().min(0.01).max(10_000).nullable(),
  fired: z.array(firedLightSchema).min(1).max(40),
  ambientLuxSeconds: luxSeconds,
  /** What was known of each piece before any reading of this job. */
  startStops: z.record(pieceKeyText, stops),
  by: writtenBySchema,
  /** Somebody looked, and it is so: to be learned from although it does not fit. */
  accepted: writtenBySchema.nullable(),
  withdrawn: writtenBySchema.nullable(),
})
export type Reading = Readonly<z.infer<typeof readingSchema>>
