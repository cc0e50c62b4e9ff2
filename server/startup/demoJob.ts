import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { z } from 'zod'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Access } from '../access/access.ts'
import { ROLES, type Role } from '../access/role.ts'
import type { OpenDemo } from '../http/routes/demo.ts'
import { planUpdate } from '../planUpdate.ts'
import type { Store } from '../store/store.ts'

const DEMO_JOB_ID = 'demo'

const keysSchema = z.object({ photographer: z.string(), assistant: z.string(), client: z.string() })

/**
 * The demo job, made on the first start. Its keys are kept in `keysPath`, readable by this account alone, so that every
 * start prints the same links; all other jobs' keys are kept nowhere. Keys that no longer open anything are replaced.
 */
export async function openDemoJob(store: Store, access: Access, keysPath: string): Promise<OpenDemo> {
  if ((await store.job(DEMO_JOB_ID)) === null) {
    const made = await access.createJob([{ document: 'plan', update: planUpdate(demoPlan) }], DEMO_JOB_ID)
    writeKeys(keysPath, made.keys)
    return made
  }
  const known = readKeys(keysPath)
  const keys = { ...known } as Record<Role, string>
  for (const role of ROLES) {
    const key = known[role]
    if (key === undefined || !(await access.opens(DEMO_JOB_ID, key, role))) keys[role] = await access.renewLink(DEMO_JOB_ID, role)
  }
  writeKeys(keysPath, keys)
  return { jobId: DEMO_JOB_ID, keys }
}

function readKeys(path: string): Partial<Record<Role, string>> {
  if (!existsSync(path)) return {}
  try {
    return keysSchema.parse(JSON.parse(readFileSync(path, 'utf8')))
  } catch {
    return {}
  }
}

function writeKeys(path: string, keys: Readonly<Record<Role, string>>): void {
  writeFileSync(path, `${JSON.stringify(keys, null, 2)}\n`, { mode: 0o600 })
}
