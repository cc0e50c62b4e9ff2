import type { Pen } from '../access/seat.ts'
import type { DocumentKey } from '../store/store.ts'
import type { Connection } from './connection.ts'
import type { DecideWrite } from './ownWrite.ts'
import { Room } from './room.ts'
import type { RoomHouse } from './roomHouse.ts'
import { timedLog } from './tally.ts'

/** Stock clients stop believing a state after 30 s without news of it (y-protocols, outdatedTimeout). */
const RENEW_MS = 12_000

/** The rooms that are open, each made when the first person comes. */
export class Rooms {
  readonly #house: RoomHouse
  readonly #rooms = new Map<string, Room>()
  readonly #renewal: NodeJS.Timeout

  constructor(house: Omit<RoomHouse, 'documents' | 'closed'>) {
    this.#house = {
      ...house,
      documents: timedLog(house.store, house.tally),
      closed: (room) => {
        const name = nameOf(room.key)
        if (this.#rooms.get(name) === room) this.#rooms.delete(name)
      },
    }
    this.#renewal = setInterval(() => this.#rooms.forEach((room) => room.sayAsRelay()), RENEW_MS).unref()
  }

  get count(): number {
    return this.#rooms.size
  }

  /** The room now entered; null when it is full. */
  enter(key: DocumentKey, connection: Connection): Room | null {
    const room = this.find(key) ?? this.#open(key)
    if (room.people >= this.#house.limits.peoplePerRoom) return null
    room.enter(connection)
    return room
  }

  /** Writes something of the relay's own into a document, opening its room when nobody is there. */
  write(key: DocumentKey, decide: DecideWrite): Promise<void> {
    return (this.find(key) ?? this.#open(key)).write(decide)
  }

  penMoved(jobId: string, pen: Pen): void {
    for (const room of this.#rooms.values()) if (room.key.jobId === jobId) room.penMoved(pen)
  }

  /** The room of that document, while it is open. */
  find(key: DocumentKey): Room | undefined {
    return this.#rooms.get(nameOf(key))
  }

  all(): Iterable<Room> {
    return this.#rooms.values()
  }

  /** Serves all that arrived, then ends every connection. */
  async stop(): Promise<void> {
    clearInterval(this.#renewal)
    await Promise.all([...this.#rooms.values()].map((room) => room.stop()))
  }

  #open(key: DocumentKey): Room {
    const room = new Room(key, this.#house)
    this.#rooms.set(nameOf(key), room)
    return room
  }
}

function nameOf({ jobId, document }: DocumentKey): string {
  return `${jobId}/${document}`
}
