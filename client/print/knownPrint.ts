import type { PrintMark } from '../../shared-core/stands/printMark.ts'
import type { Notes } from '../../shared-core/notes/notes.ts'
import type { Lock } from '../../shared-core/notes/entries.ts'

/** What the notes know of a print: its lock, the lock that took its place, and the kept plan that it was made of. */
export interface KnownPrint {
  readonly lock: Lock | null
  /** The lock of its look that stands now; null where none does. */
  readonly standing: Lock | null
  /** Under which the relay keeps the printed plan; null where it is not known to. */
  readonly planHash: string | null
}

/** Looks a mark up among what was locked and meant. */
export function knownPrint({ lookId, lockNumber, planHashStart }: PrintMark, { locks, thatOnes }: Notes): KnownPrint {
  const ofLook = Object.values(locks).filter((lock) => lock.lookId === lookId)
  const lock = ofLook.find(({ number }) => number === lockNumber) ?? null
  const standing = ofLook.reduce<Lock | null>((last, one) => (last === null || one.number > last.number ? one : last), null)
  const isPrinted = (hash: string): boolean => planHashStart !== '' && hash.startsWith(planHashStart)
  const kept = [...Object.values(locks), ...Object.values(thatOnes)].find(({ planHash }) => isPrinted(planHash))
  return { lock, standing, planHash: kept?.planHash ?? null }
}
