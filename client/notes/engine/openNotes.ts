import { sendCommands } from '../../connection/api.ts'
import type { SeatInfo } from '../../connection/seat.ts'
import type { BoardStore } from '../../session/boardStore.ts'
import { deviceShelf } from './deviceShelf.ts'
import { joinNotes } from './notesDocument.ts'
import { createNotesStore, type NotesStore } from './notesStore.ts'
import { ownVotesOf } from './ownVotes.ts'

/** Joins the notes of a seat's job, with the outbox that lies on this device, and sends what still lies there. */
export function openNotes(seat: SeatInfo, board: BoardStore): NotesStore {
  const source = joinNotes(seat.seatId)
  const store = createNotesStore({
    seat, source,
    shownPlan: () => board.getState().shown,
    ownVotes: ownVotesOf(seat.seatId),
    shelf: deviceShelf(seat.seatId),
    post: (commands) => sendCommands(seat.seatId, commands),
    inTurn: (send) => inTurnOfSeat(seat.seatId, send),
  })
  const stopWaking = source.onReached(store.wake)
  // A page that was put away has had its pauses stretched by the browser.
  const onSeenAgain = () => document.visibilityState === 'visible' && store.wake()
  addEventListener('online', store.wake)
  document.addEventListener('visibilitychange', onSeenAgain)
  return {
    ...store,
    close() {
      removeEventListener('online', store.wake)
      document.removeEventListener('visibilitychange', onSeenAgain)
      stopWaking()
      store.close()
      source.close()
    },
  }
}

/** One page of a seat sends at a time. Over plain http there are no such turns: two may send the same, which the relay does once. */
async function inTurnOfSeat(seatId: string, send: () => Promise<void>): Promise<void> {
  const locks = (navigator as { readonly locks?: LockManager }).locks
  if (locks === undefined) await send()
  else await locks.request(`halfstop/${seatId}/outbox`, send)
}
