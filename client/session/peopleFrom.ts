import { z } from 'zod'
import type { SeatInfo } from '../connection/seat.ts'
import { SEES_PLAINLY, type Person } from './board.ts'
import { readPresence, type StampedPresence } from './presence.ts'

/** What the relay says in its own entry of the awareness states. */
export interface RelayWord {
  /** The client who holds the pen; null while it is with the photographer. */
  readonly pen: { readonly seatId: string; readonly name: string } | null
  /** Why edits are not kept; null while they are. */
  readonly notKept: string | null
}

const relayWordSchema = z.object({
  pen: z.object({ seatId: z.string().max(64), name: z.string().max(120) }).nullable().catch(null),
  notKept: z.string().max(400).nullable().catch(null),
})

/** Only the relay can set `relay`: it strips the field from everybody else's states. Null when it has not spoken. */
export function relayWordFrom(states: ReadonlyMap<number, unknown>): RelayWord | null {
  for (const state of states.values()) {
    if (typeof state !== 'object' || state === null || !('relay' in state)) continue
    const read = relayWordSchema.safeParse(state.relay)
    if (read.success) return read.data
  }
  return null
}

/**
 * The people on the job, oneself first, then by name. A person with several pages open is one person, seen where they
 * last did something; one's own other pages are oneself.
 */
export function peopleFrom(
  states: ReadonlyMap<number, unknown>, ownClientId: number, own: SeatInfo, pen: RelayWord['pen'],
): readonly Person[] {
  const others = new Map<string, StampedPresence>()
  for (const [clientId, state] of states) {
    const presence = clientId === ownClientId ? null : readPresence(state)
    if (presence === null || presence.seat.seatId === own.seatId) continue
    const known = others.get(presence.seat.seatId)
    if (known === undefined || liveliness(presence) > liveliness(known)) others.set(presence.seat.seatId, presence)
  }
  const self: StampedPresence = { seat: own, pointer: null, selection: null, inHand: null, lookId: null, sees: SEES_PLAINLY }
  const sorted = [...others.values()].sort((a, b) => a.seat.name.localeCompare(b.seat.name) || (a.seat.seatId < b.seat.seatId ? -1 : 1))
  return [self, ...sorted].map((presence): Person => {
    const { seat, pointer, selection, inHand, lookId, sees } = presence
    const hasPen = pen === null ? seat.role === 'photographer' : seat.seatId === pen.seatId
    return { seatId: seat.seatId, name: seat.name, role: seat.role, isSelf: seat.seatId === own.seatId, hasPen, pointer, selection, inHand, lookId, sees }
  })
}

function liveliness(presence: StampedPresence): number {
  return (presence.inHand === null ? 0 : 2) + (presence.pointer === null ? 0 : 1)
}
