import * as Y from 'yjs'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { sha256 } from '../../shared-core/arithmetic/sha256.ts'
import { canonicalJson } from '../../shared-core/notes/canonical.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { DocumentLog } from '../store/store.ts'

/** A plan with its canonical JSON and the SHA-256 of that. */
export interface NamedPlan {
  readonly plan: Plan
  readonly text: string
  readonly hash: string
}

/** A change that the person made just before asking may still be on its way: so often it is waited for. */
const LOOKS = 8
const BETWEEN_LOOKS_MS = 80

/**
 * The plan of a job as it is kept this instant, which is what everybody was shown; null while there is none. With
 * `hashSeen` it waits a moment for the plan of that name, then gives what there is.
 * @throws StoreError
 */
export async function currentPlan(log: DocumentLog, jobId: string, hashSeen: string | null): Promise<NamedPlan | null> {
  for (let look = 1; ; look++) {
    const named = await readNamed(log, jobId)
    if (hashSeen === null || named?.hash === hashSeen || look === LOOKS) return named
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_LOOKS_MS))
  }
}

async function readNamed(log: DocumentLog, jobId: string): Promise<NamedPlan | null> {
  const { updates } = await log.readDocument({ jobId, document: 'plan' })
  const doc = new Y.Doc()
  doc.transact(() => updates.forEach((update) => Y.applyUpdate(doc, update)))
  const { plan } = readPlanFromDocument(doc)
  doc.destroy()
  if (plan === null) return null
  const text = canonicalJson(plan)
  return { plan, text, hash: sha256(text) }
}
