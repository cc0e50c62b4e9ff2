import type { Look } from '../../plan/schema/look.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import type { Fit } from '../fit.ts'
import type { Prediction } from '../prediction.ts'
import type { Snag } from '../snag.ts'

/** All that a check may look at: the plan, how the set fits, and what has been predicted of it. */
export interface CheckView {
  readonly plan: Plan
  readonly look: Look
  readonly fit: Fit
  readonly measured: Omit<Prediction, 'snags' | 'cautions'>
}

/** One rule: gives its snags, or none when it has nothing to say. */
export type Check = (view: CheckView) => readonly Snag[]

/** "+0.4", "−1.3": stops as they are said, with a real minus. */
export function stopsText(stops: number): string {
  const rounded = Math.round(stops * 10) / 10
  return `${rounded < 0 ? '−' : '+'}${Math.abs(rounded).toFixed(1)}`
}

/** "0.4": an amount of stops without a sign. */
export function amountText(stops: number): string {
  return Math.abs(stops).toFixed(1)
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

export function centimetresText(metres: number): string {
  return `${Math.round(metres * 100)} cm`
}
