import type { Person } from '../../session/board.ts'

/**
 * Whose view somebody really sees who looks with a person: that person's, or of whom they in turn look with. Null where
 * the person has left, and where it comes round to oneself: then nobody leads.
 */
export function leaderOf(people: readonly Person[], seatId: string, ownSeatId: string): Person | null {
  const met = new Set<string>([ownSeatId])
  for (let at = seatId; ;) {
    if (met.has(at)) return null
    met.add(at)
    const person = people.find((one) => one.seatId === at)
    if (person === undefined || person.sees.with === null) return person ?? null
    at = person.sees.with
  }
}
