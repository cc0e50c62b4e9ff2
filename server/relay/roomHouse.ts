import type { Log } from '../log.ts'
import type { Neighbours } from '../neighbours/neighbours.ts'
import type { DocumentLog, Store } from '../store/store.ts'
import type { RelayLimits } from './limits.ts'
import type { Room } from './room.ts'
import type { StoreHealth } from './storeHealth.ts'
import type { Tally } from './tally.ts'

/** What rooms stand in, the same for all of them. */
export interface RoomHouse {
  readonly store: Store
  /** The store's documents, each append told to the tally. */
  readonly documents: DocumentLog
  readonly health: StoreHealth
  readonly limits: RelayLimits
  readonly log: Log
  readonly tally: Tally
  /** Other relays on the same store; null where there can be none. */
  readonly neighbours: Neighbours | null
  /** Called once, when the room will serve nobody any more. */
  readonly closed: (room: Room) => void
}
