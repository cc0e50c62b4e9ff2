import { z } from 'zod'
import type { Json, PlanChange, PlanEdit } from './edit.ts'
import { schemaAt } from './schema/schemaAt.ts'

const MOST_CHANGES = 500
const DEEPEST_PATH = 8

const editSchema = z.strictObject({
  name: z.string().min(1).max(60),
  changes: z
    .array(
      z.union([
        z.strictObject({ path: pathSchema(), set: z.unknown() }),
        z.strictObject({ path: pathSchema(), remove: z.literal(true) }),
      ]),
    )
    .max(MOST_CHANGES),
})

/**
 * An edit that came from somebody else's device (what they have in hand), or null when it is not one, or would make
 * anything but a plan out of a plan: every value must be what the schema wants at its place, and only entries of
 * records may be removed.
 */
export function readEdit(value: unknown): PlanEdit | null {
  const parsed = editSchema.safeParse(value)
  if (!parsed.success) return null
  const changes: PlanChange[] = []
  for (const change of parsed.data.changes) {
    const sound = soundChange(change)
    if (!sound) return null
    changes.push(sound)
  }
  return { name: parsed.data.name, changes }
}

function soundChange(change: z.infer<typeof editSchema>['changes'][number]): PlanChange | null {
  const schema = schemaAt(change.path)
  if (!schema) return null
  if ('remove' in change) {
    return schemaAt(change.path.slice(0, -1)) instanceof z.ZodRecord ? { path: change.path, remove: true } : null
  }
  const set = schema.safeParse(change.set)
  return set.success ? { path: change.path, set: set.data as Json } : null
}

function pathSchema() {
  return z.array(z.string().max(60)).min(1).max(DEEPEST_PATH)
}
