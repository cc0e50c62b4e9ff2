import type { EditResult } from '../../plan/edits/changing.ts'
import type { Look } from '../../plan/schema/look.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import type { Fit } from '../fit.ts'
import type { Prediction } from '../prediction.ts'
import type { Snag, SnagMend } from '../snag.ts'

/** All that a check may look at: the plan, how the set fits, and what has been predicted of it. */
export interface CheckView {
  readonly plan: Plan
  readonly look: Look
  readonly fit: Fit
  readonly measured: Omit<Prediction, 'snags' | 'accepted' | 'cautions'>
}

/** One rule: gives its snags, or none when it has nothing to say. */
export type Check = (view: CheckView) => readonly Snag[]

/** "0.4": an amount of stops without a sign. */
export function amountText(stops: number): string {
  return Math.abs(stops).toFixed(1)
}

/** "40 cm", to the whole centimetre. */
export function centimetresText(metres: number): string {
  return `${Math.round(metres * 100)} cm`
}

/** A mend to spread into a snag; nothing when the edit is refused or would change nothing. */
export function mendBy(words: string, result: EditResult | null): { readonly mend?: SnagMend } {
  return result?.ok && result.edit.changes.length > 0 ? { mend: { words, edit: result.edit } } : {}
}
