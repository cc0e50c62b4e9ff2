import { keptOfLock, verifyLock, type LockVerdict } from '../../../shared-core/notes/verifyLock.ts'
import type { Notes } from '../../../shared-core/notes/notes.ts'
import { readPlan } from '../../../shared-core/plan/readPlan.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { keptAddress, type Answer } from '../../connection/api.ts'
import type { SeatInfo } from '../../connection/seat.ts'
import { sha256OffThread } from './planHash.ts'

/** Gives what the relay keeps under a hash. */
export type FetchKept = (hash: string) => Promise<Answer<Uint8Array<ArrayBuffer>>>

const PATIENCE_MS = 20_000

/** From the relay, for a seat. The bytes are what came, and not yet checked against their name. */
export function keptOf(seatId: string): FetchKept {
  return async (hash) => {
    try {
      const response = await fetch(keptAddress(seatId, hash), { signal: AbortSignal.timeout(PATIENCE_MS) })
      if (response.ok) return { ok: true, value: new Uint8Array(await response.arrayBuffer()) }
      return { ok: false, status: response.status, words: response.status === 404 ? 'The relay does not keep this any more.' : `The relay answered ${response.status}.` }
    } catch {
      return { ok: false, status: null, words: 'The relay does not answer, and what was kept lies there. Try again when it is back.' }
    }
  }
}

/** The plan kept under a hash, exactly as it was: what does not have that hash is not shown. */
export async function keptPlan(hash: string, fetchKept: FetchKept): Promise<Answer<Plan>> {
  const kept = await fetchKept(hash)
  if (!kept.ok) return kept
  if (await sha256OffThread(kept.value) !== hash) return { ok: false, status: null, words: 'What came is not what was kept under this name, so it is not shown.' }
  const plan = planFrom(kept.value)
  return plan === null ? { ok: false, status: null, words: 'This page cannot read the plan that was kept.' } : { ok: true, value: plan }
}

/**
 * Whether a lock and its yeses are what they were when made, over all that the relay keeps of it: some pictures to fetch.
 * Not known (with words) while the relay does not answer.
 */
export async function checkLock({ jobId }: SeatInfo, kept: Notes, lockId: string, fetchKept: FetchKept): Promise<Answer<LockVerdict>> {
  const lock = kept.locks[lockId]
  const things = new Map<string, Uint8Array>()
  for (const hash of lock === undefined ? [] : keptOfLock(lock)) {
    const thing = await fetchKept(hash)
    if (thing.ok) things.set(hash, thing.value)
    else if (thing.status !== 404) return thing
  }
  return { ok: true, value: verifyLock(jobId, kept, lockId, things) }
}

function planFrom(bytes: Uint8Array): Plan | null {
  try {
    const read = readPlan(JSON.parse(new TextDecoder().decode(bytes)))
    return read.ok ? read.plan : null
  } catch {
    return null
  }
}
