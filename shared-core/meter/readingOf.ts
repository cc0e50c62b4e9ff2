import type { Plan } from '../plan/schema/plan.ts'
import type { Reading } from '../rig/readings.ts'
import type { WrittenBy } from '../rig/written.ts'
import { piecesOf } from './pieces.ts'
import type { Question } from './questions.ts'
import { startsOf } from './unknowns.ts'

/**
 * The answer to a question as it is kept, with the facts it was made under.
 * @param earlier readings of the job so far, withdrawn ones too: they say what was known of each piece before any
 */
export function readingOf(
  plan: Plan, earlier: Readonly<Record<string, Reading>>, question: Question,
  read: { readonly fNumber: number; readonly said: string; readonly by: WrittenBy },
): Reading {
  const { lookId, areaId, receptor, pointed, expected, isWanted, plannedFNumber } = question
  const starts = startsOf(plan, Object.entries(earlier))
  const pieces = new Set(expected.parts.flatMap(piecesOf))
  return {
    lookId, areaId, receptor, pointed,
    isoSpeed: expected.isoSpeed,
    constant: expected.constant,
    fNumber: read.fNumber,
    said: read.said.slice(0, 120),
    wantedFNumber: isWanted ? plannedFNumber : null,
    fired: [...expected.parts],
    ambientLuxSeconds: expected.ambientLuxSeconds,
    startStops: Object.fromEntries([...pieces].map((key) => [key, starts(key)])),
    by: read.by,
    accepted: null,
    withdrawn: null,
  }
}
