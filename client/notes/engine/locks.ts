import type { Lock, ScreenCheck, Yes } from '../../../shared-core/notes/entries.ts'
import { chainEnd, yesesOf } from '../../../shared-core/notes/lockHash.ts'
import { inSequence, supersededBy, type Notes } from '../../../shared-core/notes/notes.ts'

export interface LockView {
  readonly id: string
  readonly lock: Lock
  /** In the order they were given, each with the screen it was judged on; null where that was not checked. */
  readonly yeses: readonly { readonly id: string; readonly yes: Yes; readonly check: ScreenCheck | null }[]
  /** The later lock of the same look in whose favour this one no longer stands; null while it stands. */
  readonly supersededBy: string | null
  /** The lock of the same look that this one took the place of. */
  readonly supersedes: string | null
  /** What somebody may write down to be sure later that nothing was changed. */
  readonly chainEnd: string
  /** This person has said yes to it. */
  readonly hasSaidYes: boolean
}

/** All locks of the job, the latest first. */
export function locksOf(notes: Notes, seatId: string): readonly LockView[] {
  const locks = inSequence(notes, 'locks').map(([id, lock]) => {
    const yeses = yesesOf(notes, id).map(([yesId, yes]) => (
      { id: yesId, yes, check: yes.screenCheckId === null ? null : (notes.screenChecks[yes.screenCheckId] ?? null) }))
    return {
      id, lock, yeses,
      supersededBy: supersededBy(notes, id),
      chainEnd: chainEnd(notes, id) ?? lock.hash,
      hasSaidYes: yeses.some(({ yes }) => yes.by.seatId === seatId),
    }
  })
  return locks.map((view) => ({ ...view, supersedes: locks.find(({ supersededBy: by }) => by === view.id)?.id ?? null })).reverse()
}

/** The lock that stands for a look; null when there is none. */
export function standingLock(locks: readonly LockView[], lookId: string): LockView | null {
  return locks.find(({ lock, supersededBy: by }) => lock.lookId === lookId && by === null) ?? null
}

/** This person's latest screen check, which a yes names; null before any. */
export function ownScreenCheck(notes: Notes, seatId: string): { readonly id: string; readonly check: ScreenCheck } | null {
  const own = inSequence(notes, 'screenChecks').filter(([, check]) => check.by.seatId === seatId).at(-1)
  return own === undefined ? null : { id: own[0], check: own[1] }
}
