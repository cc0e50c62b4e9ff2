import type { Pen } from '../access/seat.ts'
import type { DocumentKey } from '../store/store.ts'
import type { Connection } from './connection.ts'
import type { DecideWrite } from './ownWrite.ts'
import { Room } from './room.ts'
import type { RoomHouse } from './roomHouse.ts'

/** Stock clients stop believing a state after 30 s without news of it (y-protocols, outdatedTimeout). */
const RENEW_MS = 12_000

/** The rooms that are open, each made when the first person comes. */
export class Rooms {
  readonly #house: Omit<RoomHouse, 'closed'>
  readonly #rooms = new Map<string, Room>()
  readonly #renewal: NodeJS.Timeout

  constructor(house: Omit<RoomHouse, 'closed'>) {
    this.#house = house
    this.#renewal = setInterval(() => this.#rooms.forEach((room) => room.sayAsRelay()), RENEW_MS).unref()
  }

  get count(): number {
    return this.#rooms.size
  }

  /** The room now entered; null when it is full. */
  enter(key: DocumentKey, connection: Connection): Room | null {
    const name = `${key.jobId}/${key.document}`
    const room = this.#rooms.get(name) ?? this.#open(name, key)
    if (room.people >= this.#house.limits.peoplePerRoom) return null
    room.enter(connection)
    return room
  }

  /** Writes something of the relay's own into a document, opening its room when nobody is there. */
  write(key: DocumentKey, decide: DecideWrite): Promise<void> {
    const name = `${key.jobId}/${key.document}`
    return (this.#rooms.get(name) ?? this.#open(name, key)).write(decide)
  }

  penMoved(jobId: string, pen: Pen): void {
    for (const room of this.#rooms.values()) if (room.key.jobId === jobId) room.penMoved(pen)
  }

  /** The room of that document, while it is open. */
  find({ jobId, document }: DocumentKey): Room | undefined {
    return this.#rooms.get(`${jobId}/${document}`)
  }

  all(): Iterable<Room> {
    return this.#rooms.values()
  }

  /** Serves all that arrived, then ends every connection. */
  async stop(): Promise<void> {
    clearInterval(this.#renewal)
    await Promise.all([...this.#rooms.values()].map((room) => room.stop()))
  }

  #open(name: string, key: DocumentKey): Room {
    const room = new Room(key, {
      ...this.#house,
      closed: (closedRoom) => {
        if (this.#rooms.get(name) === closedRoom) this.#rooms.delete(name)
      },
    })
    this.#rooms.set(name, room)
    return room
  }
}
