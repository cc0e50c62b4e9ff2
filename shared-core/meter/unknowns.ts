import type { Plan } from '../plan/schema/plan.ts'
import type { FiredPart, Reading } from '../rig/readings.ts'
import { independent, type Belief } from './estimate.ts'
import { pieceInKit, piecesOf, spreadBefore, UNIT_SPREAD_STOPS, type PieceKey } from './pieces.ts'

/** What is estimated: pieces of the kit first, then each light that was read or stands in a look, as itself. */
export interface Unknowns {
  readonly pieces: readonly PieceKey[]
  readonly before: Belief
  weightsOf(lookId: string, part: Pick<FiredPart, 'lightId' | 'headId' | 'modifierId' | 'gelIds'>): Float64Array
}

/** What is to be estimated for these readings and for all lights of the plan, as known before any reading. */
export function unknownsOf(plan: Plan, entries: readonly (readonly [string, Reading])[]): Unknowns {
  const read = entries.flatMap(([, { lookId, fired }]) => fired.map((part) => ({ lookId, part })))
  const standing = Object.entries(plan.looks).flatMap(([lookId, look]) =>
    Object.entries(look.lights).map(([lightId, light]) => ({ lookId, part: { ...light, lightId } })))
  const all = [...read, ...standing]
  const pieces = [...new Set(all.flatMap(({ part }) => piecesOf(part)))].sort()
  const units = [...new Set(all.map(({ lookId, part }) => unitKey(lookId, part.lightId)))].sort()
  const indexOf = new Map([...pieces, ...units].map((key, i) => [key, i]))
  const starts = startsOf(plan, entries)
  return {
    pieces,
    before: independent(
      [...pieces.map((key) => starts(key)), ...units.map(() => 0)],
      [...pieces.map((key) => spreadBefore(plan, key)), ...units.map(() => UNIT_SPREAD_STOPS)],
    ),
    weightsOf(lookId, part) {
      const weights = new Float64Array(indexOf.size)
      for (const key of [...piecesOf(part), unitKey(lookId, part.lightId)]) {
        const i = indexOf.get(key)
        if (i !== undefined) weights[i]! += 1
      }
      return weights
    },
  }
}

function unitKey(lookId: string, lightId: string): string {
  return `unit:${lookId}.${lightId}`
}

/**
 * What was known of a piece before this job's readings: as the first reading that used it says, else what the plan has.
 * Withdrawn readings still say it.
 */
export function startsOf(plan: Plan, entries: readonly (readonly [string, Reading])[]): (key: PieceKey) => number {
  const inTime = [...entries].sort(([keyA, a], [keyB, b]) => a.by.atMs - b.by.atMs || (keyA < keyB ? -1 : 1))
  return (key) => {
    const first = inTime.find(([, { startStops }]) => Object.hasOwn(startStops, key))
    return first?.[1].startStops[key] ?? pieceInKit(plan, key)?.learnedStops ?? 0
  }
}
