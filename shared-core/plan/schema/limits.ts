import { z } from 'zod'
import type { PlanPath } from '../edit.ts'
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
  [lookSchema.shape.mustReadTrue, LIMITS.trueAreasPerLook],
  [lookSchema.shape.accepted, LIMITS.acceptedPerLook],
  [roomSchema.shape.columns, LIMITS.piecesPerLook],
  [roomSchema.shape.circuits, LIMITS.piecesPerLook],
])

/** How many entries a record may hold. Throws for a record nobody set a limit for: each needs one. */
export function mostEntriesOf(record: z.ZodType): number {
  const most = mostEntries.get(record)
  if (most === undefined) throw new Error('a record of the plan has no limit of entries')
  return most
}

export interface OverfullRecord {
  readonly path: PlanPath
  readonly entries: number
  readonly most: number
}

/** Branches that are known to hold no more than they may: a plan under a hand is the same but for one of them. */
const withinLimits = new WeakSet<object>()

/**
 * Records that hold more than they may. Looks at counts alone, so that a file of a million lights can be refused
 * before anything parses it; `value` may be anything.
 */
export function overfullRecords(value: unknown, schema: z.ZodType = planSchema, path: PlanPath = []): OverfullRecord[] {
  if (typeof value !== 'object' || value === null) return []
  if (withinLimits.has(value)) return []
  const overfull = overfullBelow(value as Readonly<Record<string, unknown>>, schema, path)
  if (overfull.length === 0) withinLimits.add(value)
  return overfull
}

function overfullBelow(branch: Readonly<Record<string, unknown>>, schema: z.ZodType, path: PlanPath): OverfullRecord[] {
  const keys = Object.keys(branch)
  if (schema instanceof z.ZodRecord) {
    const most = mostEntriesOf(schema)
    if (keys.length > most) return [{ path, entries: keys.length, most }]
    return keys.flatMap((key) => overfullRecords(branch[key], schema.valueType as z.ZodType, [...path, key]))
  }
  if (!(schema instanceof z.ZodObject)) return []
  const shape = schema.shape as Readonly<Record<string, z.ZodType>>
  return keys.flatMap((key) => {
    const below = Object.hasOwn(shape, key) ? shape[key] : undefined
    return below ? overfullRecords(branch[key], below, [...path, key]) : []
  })
}
