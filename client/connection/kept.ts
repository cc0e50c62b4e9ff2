import type { z } from 'zod'

/**
 * Small things a browser keeps for one device. Everything kept so is a convenience: a browser that keeps nothing (private
 * windows, full storage) loses no more than that, so every failure falls back without a word.
 */
export function readKept<Value>(key: string, schema: z.ZodType<Value>, otherwise: Value): Value {
  try {
    const kept = localStorage.getItem(key)
    const parsed = kept === null ? null : schema.safeParse(JSON.parse(kept))
    return parsed?.success === true ? parsed.data : otherwise
  } catch {
    return otherwise
  }
}

export function writeKept(key: string, value: unknown): void {
  try {
    localStorage.setItem(key, JSON.stringify(value))
  } catch {
    // See above.
  }
}
