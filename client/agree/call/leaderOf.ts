import type { Person } from '../../session/board.ts'

/**
 * Whose view somebody really sees who looks with a person: that person's, or of whom they in turn look with. Null where
 * the person has left, and where it comes round to oneself: then nobody leads.
 */
export function leaderOf(people: readonly Person[], seatId: string, ownSeatId: string): Person | null {
  const last = chainFrom(people, seatId, ownSeatId).at(-1)
  return last === undefined || last.sees.with !== null ? null : last
}

/**
 * Whether one leads, of those who look with each other in a ring because they asked at the same moment: the one whose
 * seat comes first. Every page of the ring finds the same, so that one lets go and the others look on.
 */
export function leadsRing(people: readonly Person[], seatId: string, ownSeatId: string): boolean {
  const chain = chainFrom(people, seatId, ownSeatId)
  return chain.at(-1)?.sees.with === ownSeatId && chain.every((person) => ownSeatId < person.seatId)
}

/** Those from a person on, each looking with the next; ends before somebody who has left, oneself, or one met before. */
function chainFrom(people: readonly Person[], seatId: string, ownSeatId: string): readonly Person[] {
  const chain: Person[] = []
  for (let at: string | null = seatId; at !== null && at !== ownSeatId;) {
    const person = people.find((one) => one.seatId === at)
    if (person === undefined || chain.includes(person)) return person === undefined ? [] : chain
    chain.push(person)
    at = person.sees.with
  }
  return chain
}
