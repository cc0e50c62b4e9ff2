import { z } from 'zod'
import type { Json } from '../edit.ts'

/**
 * The value nearest to `value` that the schema of a leaf allows: numbers are brought within bounds, texts cut to
 * length. Undefined when nothing near is allowed: another type, NaN, an unknown choice.
 */
export function nearestAllowed(schema: z.ZodType, value: unknown): Json | undefined {
  if (schema instanceof z.ZodNullable) {
    return value === null ? null : nearestAllowed(schema.unwrap() as z.ZodType, value)
  }
  const parsed = schema.safeParse(near(schema, value))
  return parsed.success ? (parsed.data as Json) : undefined
}

function near(schema: z.ZodType, value: unknown): unknown {
  if (schema instanceof z.ZodNumber) return withinBounds(schema, value)
  return schema instanceof z.ZodString ? cut(schema, value) : value
}

function withinBounds(schema: z.ZodNumber, value: unknown): unknown {
  if (typeof value !== 'number' || !Number.isFinite(value)) return undefined
  const bounded = Math.min(Math.max(value, schema.minValue ?? -Infinity), schema.maxValue ?? Infinity)
  const whole = schema.isInt ? Math.round(bounded) : bounded
  // Minus zero would print and compare as something else than zero.
  return whole === 0 ? 0 : whole
}

function cut(schema: z.ZodString, value: unknown): unknown {
  if (typeof value !== 'string') return undefined
  const longest = schema.maxLength ?? Infinity
  if (value.length <= longest) return value
  // A pair of surrogates is one character: half of it would be no text at all.
  const whole = value.charCodeAt(longest - 1) >> 10 === 0xd800 >> 10 ? longest - 1 : longest
  return value.slice(0, whole)
}

/** What a leaf wants, for the sentence that refuses another value. */
export function wantedBy(schema: z.ZodType): string {
  if (schema instanceof z.ZodNullable) return wantedBy(schema.unwrap() as z.ZodType)
  if (schema instanceof z.ZodNumber) return 'a number'
  if (schema instanceof z.ZodString) return 'a text of the right form'
  if (schema instanceof z.ZodBoolean) return 'yes or no'
  if (schema instanceof z.ZodEnum) return `one of: ${schema.options.join(', ')}`
  if (schema instanceof z.ZodArray) return 'a list'
  return 'a value of the right kind'
}
