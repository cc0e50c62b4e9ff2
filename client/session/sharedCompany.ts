import type { Awareness } from 'y-protocols/awareness'
import type { SeatInfo } from '../connection/seat.ts'
import { SEES_PLAINLY, type Person } from './board.ts'
import type { Company, OwnPresence } from './company.ts'
import { latestOnly } from './latestOnly.ts'
import { peopleFrom, relayWordFrom, type RelayWord } from './peopleFrom.ts'
import { readPresence } from './presence.ts'

/** Thirty a second: as smooth as an eye needs, and kind to a phone's battery. */
const presenceIntervalMs = 33

export interface SharedCompany extends Company {
  /** What the relay says of itself: who holds the pen, whether it can keep edits. */
  relayWord(): RelayWord
  /** Whether that is its word on this connection, and not the last one of a connection before. */
  relayHasSpoken(): boolean
  moveTo(awareness: Awareness): void
  close(): void
}

export interface PenRequests {
  readonly handPenTo: (seatId: string) => void
  readonly takePenBack: () => void
}

/** The others, as their states in the shared document's awareness say. */
export function createSharedCompany(first: Awareness, seat: SeatInfo, pen: PenRequests): SharedCompany {
  const listeners = new Set<() => void>()
  let awareness = first
  let own: OwnPresence = { pointer: null, selection: null, inHand: null, lookId: null, sees: SEES_PLAINLY }
  let people: readonly Person[] = []
  let relayWord: RelayWord = { pen: null, notKept: null }

  const say = latestOnly<OwnPresence>((presence) => awareness.setLocalState({ ...presence }), presenceIntervalMs)

  function onAwareness(): void {
    // Its last word holds while the relay is away: who has the pen goes on writing, and the relay decides on return.
    relayWord = relayWordFrom(awareness.getStates()) ?? relayWord
    people = peopleFrom(awareness.getStates(), awareness.clientID, seat, relayWord.pen)
    listeners.forEach((listener) => listener())
  }

  function hold(next: Awareness): void {
    awareness.off('change', onAwareness)
    awareness = next
    awareness.setLocalState({ ...own })
    awareness.on('change', onAwareness)
    onAwareness()
  }
  hold(first)

  return {
    people: () => people,
    relayWord: () => relayWord,
    relayHasSpoken: () => relayWordFrom(awareness.getStates()) !== null,
    tell(presence) {
      own = presence
      say(presence)
    },
    ...pen,
    onChange(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    namesBehind: (clientIds) => [...new Set(clientIds.flatMap((id) => readPresence(awareness.getStates().get(id))?.seat.name ?? []))],
    seatsBehind: (clientIds) => [...new Set(clientIds.flatMap((id) => readPresence(awareness.getStates().get(id))?.seat.seatId ?? []))],
    moveTo: hold,
    close: () => awareness.off('change', onAwareness),
  }
}
