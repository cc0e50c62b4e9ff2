import type { Log } from '../log.ts'
import type { Neighbours } from '../neighbours/neighbours.ts'
import type { Store } from '../store/store.ts'
import type { RelayLimits } from './limits.ts'
import type { Room } from './room.ts'
import type { StoreHealth } from './storeHealth.ts'
import type { Tally } from './tally.ts'

/** What a room stands in. */
export interface RoomHouse {
  readonly store: Store
  readonly health: StoreHealth
  readonly limits: RelayLimits
  readonly log: Log
  readonly tally: Tally
  /** Other relays on the same store; null where there can be none. */
  readonly neighbours: Neighbours | null
  /** Called once, when the room will serve nobody any more. */
  readonly closed: (room: Room) => void
}
