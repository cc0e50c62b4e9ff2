import { sha256 } from '../arithmetic/sha256.ts'
import type { Look } from '../plan/schema/look.ts'
import { asTick, MARKS_ID } from './builtAs.ts'
import { standingInOrder } from './standOrder.ts'

const SIXTY_FOUR = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'

/** Ids of all that is built in a look, the marks first. */
export function builtIds(look: Look): readonly string[] {
  return [MARKS_ID, ...standingInOrder(look).map(({ id }) => id)]
}

/**
 * Three letters that stand for one stand exactly as it is planned: 18 bits of a SHA-256, so that of 262 144 changes one
 * goes unseen. Empty when the look has no such stand.
 */
export function standDigest(look: Look, standId: string): string {
  const tick = asTick('', look, standId)
  if (tick === null) return ''
  const { stand, subjectXMetres, subjectYMetres } = tick
  const bits = Number.parseInt(sha256(ordered({ stand, subjectXMetres, subjectYMetres })).slice(0, 5), 16) >> 2
  return [12, 6, 0].map((shift) => SIXTY_FOUR[(bits >> shift) & 63]!).join('')
}

/** JSON whose keys stand in one order, whoever wrote them first. */
function ordered(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) => {
    if (typeof inner !== 'object' || inner === null || Array.isArray(inner)) return inner
    return Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
  })
}

/** What can still be told of a print when the plan it was made of is nowhere to be had. */
export interface DigestDifference {
  /** Stands that are not as printed, or were not there. */
  readonly standIds: readonly string[]
  /** How many printed stands the look has no more. */
  readonly goneCount: number
}

/** Compares the digests on a print with a look as it is now. */
export function digestDifference(printed: readonly string[], look: Look): DigestDifference {
  const left = new Set(printed)
  const standIds = builtIds(look).filter((id) => !left.delete(standDigest(look, id)))
  return { standIds, goneCount: Math.max(0, left.size - standIds.length) }
}
