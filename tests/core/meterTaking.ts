import { applyEdit } from '../../shared-core/plan/edit.ts'
import { learn } from '../../shared-core/meter/learn.ts'
import { questionsOf, type Question } from '../../shared-core/meter/questions.ts'
import { readingOf } from '../../shared-core/meter/readingOf.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Reading } from '../../shared-core/rig/readings.ts'

export type Readings = Readonly<Record<string, Reading>>

export const exactFNumber = (full: number, tenths: number): number => 2 ** ((Math.round(2 * Math.log2(full)) + tenths / 10) / 2)

/** Stops of one f-number over another: a full stop is a factor of the square root of two (ISO 517). */
export const stopsBetween = (one: number, other: number): number => 2 * Math.log2(one / other)

/** The question after each light alone, by its letter. */
export function questionsAlone(plan: Plan, readings: Readings = {}): ReadonlyMap<string, Question> {
  return new Map(questionsOf(plan, 'dusk', learn(plan, readings)).filter(({ fires }) => fires === 'alone').map((question) => [question.letters[0]!, question]))
}

/** Each light read alone, in this order; `fNumberOf` is what the meter shows. */
export function readAlone(plan: Plan, letters: readonly string[], fNumberOf: (letter: string) => number): Readings {
  const questions = questionsAlone(plan)
  return letters.reduce<Readings>((soFar, letter, i) => ({
    ...soFar,
    [`r-${letter}`]: readingOf(plan, soFar, questions.get(letter)!, { fNumber: fNumberOf(letter), said: '', by: { name: 'Tobin', atMs: 1_000 + i } }),
  }), {})
}

/** The plan with everything that the readings teach. */
export function taught(plan: Plan, readings: Readings): Plan {
  const { edit } = learn(plan, readings)
  return edit === null ? plan : applyEdit(plan, edit)
}
