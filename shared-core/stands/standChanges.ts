import type { Units } from '../plan/entry/length.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { asTick, MARKS_ID } from './builtAs.ts'
import { sinceTick } from './sinceTick.ts'
import { standingInOrder } from './standOrder.ts'

/** One stand that is to be built otherwise than it was agreed, or than it was printed. */
export interface StandChange {
  readonly standId: string
  /** The light's letter, the piece's label, "The marks". */
  readonly name: string
  /** What is to be done now; never empty. */
  readonly words: readonly string[]
}

/** Which stands of a look differ from the same look of an earlier plan, in words, in set-up order; new ones last. */
export function standChanges(before: Look, plan: Plan, lookId: string, units: Units): readonly StandChange[] {
  const look = plan.looks[lookId]
  if (look === undefined) return []
  const stood = standingInOrder(before)
  const known = new Set(stood.map(({ id }) => id))
  const names = [{ id: MARKS_ID, name: 'The marks' }, ...stood.map((one) => ({ id: one.id, name: nameOf(one) }))]
  const changed = names.flatMap(({ id, name }) => {
    const words = sinceTick(asTick(lookId, before, id)!, plan, look, units)
    return words.length === 0 ? [] : [{ standId: id, name, words }]
  })
  const added = standingInOrder(look).filter(({ id }) => !known.has(id))
    .map((one) => ({ standId: one.id, name: nameOf(one), words: ['new: it was not there before'] }))
  return [...changed, ...added]
}

function nameOf(one: ReturnType<typeof standingInOrder>[number]): string {
  return one.kind === 'light' ? one.light.letter : one.piece.label
}
