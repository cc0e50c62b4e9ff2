import { z } from 'zod'
import type { PlanPath } from '../edit.ts'
import { planSchema } from './plan.ts'

/**
 * The part of the schema that rules what stands at a path, or null where the plan has no such place. Arrays and
 * unions (a gel's source) are leaves: nothing is addressed inside them.
 */
export function schemaAt(path: PlanPath, root: z.ZodType = planSchema): z.ZodType | null {
  let schema: z.ZodType = root
  for (const key of path) {
    const below = schemaBelow(schema, key)
    if (!below) return null
    schema = below
  }
  return schema
}

function schemaBelow(schema: z.ZodType, key: string): z.ZodType | null {
  if (schema instanceof z.ZodObject) {
    const shape = schema.shape as Record<string, z.ZodType>
    return Object.hasOwn(shape, key) ? (shape[key] ?? null) : null
  }
  if (schema instanceof z.ZodRecord) {
    return (schema.keyType as z.ZodType).safeParse(key).success ? (schema.valueType as z.ZodType) : null
  }
  return null
}
