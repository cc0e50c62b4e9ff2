import { sha256 } from '../arithmetic/sha256.ts'
import type { Lock } from './entries.ts'
import { lockHash, yesesOf, yesHash } from './lockHash.ts'
import type { Notes } from './notes.ts'

export interface LockVerdict {
  readonly intact: boolean
  /** What does not agree, in words; empty when all does. */
  readonly problems: readonly string[]
}

/** The names under which everything of a lock is kept. */
export function keptOfLock(lock: Lock): readonly string[] {
  return [lock.planHash, lock.predictionHash, lock.pictureHash, ...lock.standIns.map(({ pictureHash }) => pictureHash)]
}

/**
 * Whether a lock and its yeses are what they were when made. `kept` holds the bytes of {@link keptOfLock} by name; bytes
 * that are not there count as not shown, and so not intact. It cannot tell a chain that somebody made anew from end to
 * end: for that, compare `chainEnd` with what was written down.
 */
export function verifyLock(jobId: string, notes: Notes, lockId: string, kept: ReadonlyMap<string, Uint8Array>): LockVerdict {
  const lock = notes.locks[lockId]
  if (lock === undefined) return { intact: false, problems: ['This lock is not there.'] }
  const problems = [
    ...keptProblems(lock, kept),
    ...(lockHash(jobId, lockId, lock) === lock.hash ? [] : ['What the lock says was changed after it was made.']),
    ...orderProblems(notes, lock),
    ...yesProblems(notes, lockId, lock),
  ]
  return { intact: problems.length === 0, problems }
}

function keptProblems(lock: Lock, kept: ReadonlyMap<string, Uint8Array>): string[] {
  const named: readonly (readonly [string, string])[] = [
    ['The plan', lock.planHash], ['The prediction', lock.predictionHash], ['The picture', lock.pictureHash],
    ...lock.standIns.map(({ words, pictureHash }) => [`The picture on ${words} skin`, pictureHash] as const),
  ]
  return named.flatMap(([what, hash]) => {
    const bytes = kept.get(hash)
    if (bytes === undefined) return [`${what} of this lock is not there.`]
    return sha256(bytes) === hash ? [] : [`${what} is not the one that was locked.`]
  })
}

/** The lock before must be there, and its chain must hold what this one was tied to. */
function orderProblems(notes: Notes, lock: Lock): string[] {
  const all = Object.entries(notes.locks)
  if (all.filter(([, { number }]) => number === lock.number).length > 1) return [`There are two locks ${lock.number}.`]
  const before = all.find(([, { number }]) => number === lock.number - 1)
  if (lock.number === 1) return lock.previousHash === null ? [] : ['This lock is tied to one before it, and there is none.']
  if (before === undefined) return [`Lock ${lock.number - 1} is missing.`]
  const [beforeId, { hash }] = before
  const links = [hash, ...yesesOf(notes, beforeId).map(([, yes]) => yes.hash)]
  return lock.previousHash !== null && links.includes(lock.previousHash) ? [] : [`Lock ${lock.number - 1} is not the one that stood when this was made.`]
}

function yesProblems(notes: Notes, lockId: string, lock: Lock): string[] {
  let end = lock.hash
  for (const [yesId, yes] of yesesOf(notes, lockId)) {
    const check = yes.screenCheckId === null ? null : (notes.screenChecks[yes.screenCheckId] ?? null)
    if (yes.previousHash !== end || yesHash(yesId, yes, check) !== yes.hash) {
      return [`The yes of ${yes.by.name}, or one before it, was changed, added or taken out.`]
    }
    end = yes.hash
  }
  return []
}
