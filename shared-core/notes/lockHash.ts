import { sha256 } from '../arithmetic/sha256.ts'
import { canonicalJson } from './canonical.ts'
import type { Lock, ScreenCheck, Yes } from './entries.ts'
import { inSequence, type Notes } from './notes.ts'

/**
 * The first link of a lock's chain: over plan, prediction, picture and stand-ins (by their own SHA-256), conditions, who
 * and when, and the chain of the lock before. Each yes is a further link over the one before it, its words and the
 * screen check it was given on, so that nothing can be changed, added between or taken out without the end differing.
 */
export function lockHash(jobId: string, lockId: string, { hash: _hash, ...said }: Omit<Lock, 'hash'> & { readonly hash?: string }): string {
  return sha256(canonicalJson({ what: 'halfstop lock 1', jobId, lockId, ...said }))
}

/** The link a yes adds. `check` is the screen check it names. */
export function yesHash(yesId: string, yes: Omit<Yes, 'hash'>, check: ScreenCheck | null): string {
  const { lockId, words, screenCheckId, previousHash, by } = yes
  return sha256(canonicalJson({ what: 'halfstop yes 1', yesId, lockId, words, screenCheckId, previousHash, by, check }))
}

/** The yeses of a lock in the order they were given. */
export function yesesOf(notes: Notes, lockId: string): readonly (readonly [string, Yes])[] {
  return inSequence(notes, 'yeses').filter(([, yes]) => yes.lockId === lockId)
}

/** The end of a lock's chain: what somebody may write down to be sure later. Null when there is no such lock. */
export function chainEnd(notes: Notes, lockId: string): string | null {
  return yesesOf(notes, lockId).at(-1)?.[1].hash ?? notes.locks[lockId]?.hash ?? null
}
