import { eachOf } from './groups.ts'
import type { Migration } from './migrate.ts'

/**
 * Version 3 keeps what the meter taught of modifiers and sheets too, not of heads alone. Nobody had metered them for an
 * older plan, so they come up with nothing learned, and its predictions stay what they were.
 */
export const fromVersion2: Migration = {
  from: 2,
  why: 'Corrections learned from the meter, of modifiers and gels too',
  migrate: (plan) => ({
    ...plan,
    modifiers: eachOf(plan['modifiers'], (modifier) => ({ learnedStops: 0, ...modifier })),
    gels: eachOf(plan['gels'], (gel) => ({ learnedStops: 0, ...gel })),
  }),
}
