import type * as Y from 'yjs'
import type { Json } from '../plan/edit.ts'
import { migrate, migrations, type Migration } from '../plan/migrations/migrate.ts'
import { refuse, type Result } from '../plan/result.ts'
import { SCHEMA_VERSION } from '../plan/schema/plan.ts'
import { isGroup, jsonFromShared } from './branches.ts'
import { planRoot } from './planRoot.ts'
import { writeGroup } from './writePlan.ts'

/**
 * Leads a document that an older version wrote up to this one, for good: done by whoever keeps the document, before
 * anybody edits it, since edits are written in today's shape. `steps` and `target` are given by tests.
 */
export function upgradeDocument(
  doc: Y.Doc, steps: readonly Migration[] = migrations, target: number = SCHEMA_VERSION,
): Result<{ readonly cameFrom: number | null }> {
  const raw = jsonFromShared(planRoot(doc))
  if (!isGroup(raw) || Object.keys(raw).length === 0) return { ok: true, cameFrom: null }
  const current = migrate(raw, steps, target)
  if (!current.ok) return refuse(current.message)
  if (current.cameFrom < target) {
    doc.transact(() => writeGroup(planRoot(doc), current.plan as { readonly [key: string]: Json }), { by: 'load' })
  }
  return { ok: true, cameFrom: current.cameFrom }
}
