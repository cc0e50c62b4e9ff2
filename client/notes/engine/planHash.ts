import { sha256 } from '../../../shared-core/arithmetic/sha256.ts'
import { canonicalJson } from '../../../shared-core/notes/canonical.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'

const hashes = new WeakMap<Plan, Promise<string>>()

/** The name under which the relay keeps this plan: SHA-256 of its canonical JSON. */
export function planHash(plan: Plan): Promise<string> {
  const known = hashes.get(plan) ?? sha256OffThread(new TextEncoder().encode(canonicalJson(plan)))
  hashes.set(plan, known)
  return known
}

/** SHA-256 in hexadecimal, by the browser beside the page's own thread; over plain http there is no such, and the core's own does it. */
export async function sha256OffThread(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const subtle = (globalThis.crypto as Crypto | undefined)?.subtle as SubtleCrypto | undefined
  if (subtle === undefined) return sha256(bytes)
  const digest = new Uint8Array(await subtle.digest('SHA-256', bytes))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
