import * as Y from 'yjs'
import type { Json } from '../plan/edit.ts'

/**
 * How JSON lies in a shared document: groups and records are maps, so that people who change different leaves both
 * keep their change; everything else, lists too, is a leaf that is set whole.
 */
export function sharedFromJson(value: Json): unknown {
  if (!isGroup(value)) return value
  const map = new Y.Map<unknown>()
  for (const [key, below] of Object.entries(value)) map.set(key, sharedFromJson(below))
  return map
}

/** Nothing in a plan lies deeper; what does is not ours. */
const DEEPEST = 8

/**
 * The JSON of a shared value; undefined for what a plan never holds (text types, bytes, groups that are not maps,
 * nesting without end), so that none of it gets any further.
 */
export function jsonFromShared(value: unknown, depth = 0): Json | undefined {
  if (value instanceof Y.Map) {
    if (depth > DEEPEST) return undefined
    const entries: [string, Json][] = []
    for (const [key, below] of value.entries()) {
      const json = jsonFromShared(below, depth + 1)
      if (json !== undefined) entries.push([key, json])
    }
    return Object.fromEntries(entries)
  }
  if (value === null || typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value
  return Array.isArray(value) ? (value as Json) : undefined
}

/** Whether a JSON value is a group or record, and not a leaf. */
export function isGroup(value: Json | undefined): value is { readonly [key: string]: Json } {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** Whether two JSON values say the same, whatever the order of their keys. */
export function equalJson(a: Json | undefined, b: Json | undefined): boolean {
  if (a === b) return true
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false
    return a.every((value, index) => equalJson(value as Json, b[index] as Json))
  }
  if (!isGroup(a) || !isGroup(b)) return false
  const keys = Object.keys(a)
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && equalJson(a[key], b[key]))
}
