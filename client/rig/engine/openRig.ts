import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Rig, RigEdit } from '../../../shared-core/rig/rig.ts'
import type { WrittenBy } from '../../../shared-core/rig/written.ts'
import type { SeatInfo } from '../../connection/seat.ts'
import { joinRig } from './rigDocument.ts'

export interface RigBoard {
  readonly rig: Rig
  /** False while neither this device's copy nor the relay's has been read. */
  readonly isHere: boolean
  /** Writes entries, all or none. Whoever may not change the plan is not offered to. */
  readonly write: (edits: readonly RigEdit[]) => void
  /** This seat, now: for the entries that say who wrote them. */
  readonly writtenBy: () => WrittenBy
}

export interface RigStore extends StoreApi<RigBoard> {
  readonly close: () => void
}

/** Joins what is kept of the day, for as long as the seat's board is open. */
export function openRig(seat: SeatInfo, say: (words: string) => void): RigStore {
  const document = joinRig(seat.seatId, say)
  const store = createStore<RigBoard>()(() => ({
    rig: document.read(),
    isHere: document.isHere(),
    write: document.write,
    writtenBy: () => ({ name: seat.name, atMs: Date.now() }),
  }))
  document.onChange(() => store.setState({ rig: document.read(), isHere: document.isHere() }))
  return { ...store, close: document.close }
}
