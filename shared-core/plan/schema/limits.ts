import type { z } from 'zod'
import { lookSchema } from './look.ts'
import { LIMITS, planSchema } from './plan.ts'
import { roomSchema } from './room.ts'

/** Most entries of each record of the plan, by the record's own schema. */
const mostEntries = new Map<z.ZodType, number>([
  [planSchema.shape.looks, LIMITS.looks],
  [planSchema.shape.heads, LIMITS.kitEntries],
  [planSchema.shape.modifiers, LIMITS.kitEntries],
  [planSchema.shape.gels, LIMITS.kitEntries],
  [planSchema.shape.team, LIMITS.team],
  [lookSchema.shape.lights, LIMITS.lightsPerLook],
  [lookSchema.shape.pieces, LIMITS.piecesPerLook],
  [lookSchema.shape.points, LIMITS.pointsPerLook],
  [roomSchema.shape.columns, LIMITS.piecesPerLook],
  [roomSchema.shape.circuits, LIMITS.piecesPerLook],
])

/** How many entries a record may hold. Throws for a record nobody set a limit for: each needs one. */
export function mostEntriesOf(record: z.ZodType): number {
  const most = mostEntries.get(record)
  if (most === undefined) throw new Error('a record of the plan has no limit of entries')
  return most
}
