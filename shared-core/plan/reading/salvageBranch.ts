import { z } from 'zod'
import { mostEntriesOf } from '../schema/limits.ts'
import { nearestAllowed } from '../schema/nearestAllowed.ts'
import { mendingOf } from './mending.ts'

/** What was done to one place of a document so that it could be shown. */
export interface Mend {
  readonly path: readonly string[]
  readonly what: 'left-out' | 'bounded' | 'usual' | 'too-many' | 'unknown'
}

export interface Salvaged {
  /** Undefined when nothing could be saved. */
  readonly value: unknown
  readonly mends: readonly Mend[]
}

/** More mends than this in one branch are one sabotage, and are not told one by one. */
const MOST_MENDS = 60

/**
 * Salvages branch by branch and remembers the outcome of each, so that a document of which one leaf changed costs one
 * path and every other branch of the plan stays the same object. Branches given to it must never be changed.
 */
export class BranchSalvage {
  private readonly known = new WeakMap<object, { readonly schema: z.ZodType; readonly salvaged: Salvaged }>()

  salvage(schema: z.ZodType, raw: unknown): Salvaged {
    if (!(schema instanceof z.ZodObject || schema instanceof z.ZodRecord)) return leaf(schema, raw)
    if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return lost
    const known = this.known.get(raw)
    if (known?.schema === schema) return known.salvaged
    const branch = raw as Readonly<Record<string, unknown>>
    const salvaged = schema instanceof z.ZodObject ? this.group(schema, branch) : this.record(schema, branch)
    this.known.set(raw, { schema, salvaged })
    return salvaged
  }

  private group(schema: z.ZodObject, raw: Readonly<Record<string, unknown>>): Salvaged {
    const { usual, essential } = mendingOf(schema)
    const shape = schema.shape as Record<string, z.ZodType>
    const mends: Mend[] = []
    const value: Record<string, unknown> = {}
    for (const [key, below] of Object.entries(shape)) {
      const salvaged = this.salvage(below, Object.hasOwn(raw, key) ? raw[key] : undefined)
      if (salvaged.value !== undefined) {
        value[key] = salvaged.value
        collect(mends, key, salvaged.mends)
      } else if (!essential.includes(key) && Object.hasOwn(usual, key)) {
        value[key] = usual[key]
        collect(mends, key, [{ path: [], what: 'usual' }])
      } else {
        return lost
      }
    }
    const strangers = Object.keys(raw).filter((key) => !Object.hasOwn(shape, key))
    if (strangers.length > 0) collect(mends, '', [{ path: [], what: 'unknown' }])
    return { value, mends }
  }

  /** Sorted by id: a shared map has no order that all devices agree on, and sums must be taken in one. */
  private record(schema: z.ZodRecord, raw: Readonly<Record<string, unknown>>): Salvaged {
    const most = mostEntriesOf(schema)
    const ids = Object.keys(raw).filter((id) => (schema.keyType as z.ZodType).safeParse(id).success).sort()
    const mends: Mend[] = []
    const entries: [string, unknown][] = []
    for (const id of ids) {
      if (entries.length === most) {
        collect(mends, '', [{ path: [], what: 'too-many' }])
        break
      }
      const salvaged = this.salvage(schema.valueType as z.ZodType, raw[id])
      if (salvaged.value === undefined) {
        collect(mends, id, [{ path: [], what: 'left-out' }])
        continue
      }
      entries.push([id, salvaged.value])
      collect(mends, id, salvaged.mends)
    }
    if (ids.length < Object.keys(raw).length) collect(mends, '', [{ path: [], what: 'unknown' }])
    return { value: Object.fromEntries(entries), mends }
  }
}

const lost: Salvaged = { value: undefined, mends: [] }

function leaf(schema: z.ZodType, raw: unknown): Salvaged {
  if (raw === undefined) return lost
  const value = nearestAllowed(schema, raw)
  if (value === undefined) return lost
  const bounded = typeof value !== 'object' && !Object.is(value, raw) && value !== raw
  return { value, mends: bounded ? [{ path: [], what: 'bounded' }] : [] }
}

function collect(mends: Mend[], key: string, below: readonly Mend[]): void {
  for (const mend of below) {
    if (mends.length >= MOST_MENDS) return
    mends.push(key === '' ? mend : { ...mend, path: [key, ...mend.path] })
  }
}
