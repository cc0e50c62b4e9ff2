import { z } from 'zod'
import { gelSchema, headSchema, modifierSchema } from './kit.ts'
import { lookSchema } from './look.ts'
import { idText, longText, shortText } from './quantities.ts'
import { roomSchema } from './room.ts'

/** Raised with every change of shape; migrations lead every older file up to it. */
export const SCHEMA_VERSION = 3

export const teamMemberSchema = z.strictObject({ name: shortText, job: shortText })

/** How many of each a job may hold. A document past these is hostile or broken, not large. */
export const LIMITS = { looks: 40, lightsPerLook: 40, piecesPerLook: 60, pointsPerLook: 40, trueAreasPerLook: 60, acceptedPerLook: 200, kitEntries: 300, team: 60 } as const

/**
 * A whole job: the single source of truth that every number and picture is computed from.
 * Records keyed by id, scalar leaves: each leaf is one place in the shared document, so edits to different leaves merge.
 */
export const planSchema = z.strictObject({
  schemaVersion: z.literal(SCHEMA_VERSION),
  title: shortText,
  brief: longText,
  room: roomSchema,
  team: z.record(idText, teamMemberSchema),
  heads: z.record(idText, headSchema),
  modifiers: z.record(idText, modifierSchema),
  gels: z.record(idText, gelSchema),
  looks: z.record(idText, lookSchema),
})
export type Plan = z.infer<typeof planSchema>
