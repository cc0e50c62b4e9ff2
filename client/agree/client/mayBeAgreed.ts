import type { SinceLock } from '../lock/useSinceLock.ts'

/** Whether a yes can be said to what is on the screen: it is what was locked, to the eye, and was not said yes to before. */
export function mayBeAgreed(since: SinceLock): boolean {
  return !since.lock.hasSaidYes && isAsLocked(since)
}

/** Nothing that shows has changed since; false while that is not known. */
export function isAsLocked({ count, effects }: SinceLock): boolean {
  return count === 0 || effects?.visibility === 'not-visible'
}
