import { z } from 'zod'
import { planSchema, type Plan } from './plan.ts'

/**
 * The same plan with its keys in the schema's order and its records sorted by id: the order in which sums are taken
 * and files are written must not depend on who typed what first.
 */
export function inPlanOrder(plan: Plan): Plan {
  return ordered(planSchema, plan) as Plan
}

function ordered(schema: z.ZodType, value: unknown): unknown {
  if (schema instanceof z.ZodDiscriminatedUnion) {
    const option = (schema.options as z.ZodType[]).find((one) => one.safeParse(value).success)
    return option ? ordered(option, value) : value
  }
  if (typeof value !== 'object' || value === null) return value
  const branch = value as Record<string, unknown>
  if (schema instanceof z.ZodObject) {
    const shape = schema.shape as Record<string, z.ZodType>
    return Object.fromEntries(Object.entries(shape).map(([key, below]) => [key, ordered(below, branch[key])]))
  }
  if (schema instanceof z.ZodRecord) {
    const below = schema.valueType as z.ZodType
    return Object.fromEntries(Object.keys(branch).sort().map((id) => [id, ordered(below, branch[id])]))
  }
  return value
}
