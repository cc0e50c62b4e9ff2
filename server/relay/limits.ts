import type { Settings } from '../settings.ts'

/** What the relay allows and how it paces itself. Reasons and defaults stand in server/settings.ts. */
export interface RelayLimits {
  readonly messageBytes: number
  readonly presenceBytes: number
  readonly documentBytes: number
  readonly peoplePerRoom: number
  readonly connections: number
  readonly connectionsPerSeat: number
  readonly bufferedBytes: number
  readonly messagesPerSecond: number
  readonly bytesPerSecond: number
  readonly mergeWindowMs: number
  readonly presenceWindowMs: number
  readonly compactAfterUpdates: number
  readonly roomIdleMs: number
  readonly pingMs: number
}

export function relayLimits(settings: Settings): RelayLimits {
  return {
    messageBytes: settings.MAX_MESSAGE_BYTES,
    presenceBytes: settings.MAX_PRESENCE_BYTES,
    documentBytes: settings.MAX_DOCUMENT_BYTES,
    peoplePerRoom: settings.MAX_PEOPLE_PER_ROOM,
    connections: settings.MAX_CONNECTIONS,
    connectionsPerSeat: settings.MAX_CONNECTIONS_PER_SEAT,
    bufferedBytes: settings.MAX_BUFFERED_BYTES,
    messagesPerSecond: settings.MESSAGES_PER_SECOND,
    bytesPerSecond: settings.BYTES_PER_SECOND,
    mergeWindowMs: settings.MERGE_WINDOW_MS,
    presenceWindowMs: settings.PRESENCE_WINDOW_MS,
    compactAfterUpdates: settings.COMPACT_AFTER_UPDATES,
    roomIdleMs: settings.ROOM_IDLE_MS,
    pingMs: settings.PING_MS,
  }
}

/** Where everybody drags something, at ten edits a second each: so long, shared by the people, until 3 or 4 are there. */
const UNTIL_ENOUGH_MS = 350
/** To write to so many people takes about a third of a millisecond, and the relay has other rooms to serve. */
const PEOPLE_A_MS = 33

/**
 * How long edits of a room wait for others once they come thick and fast: one message goes to everybody, so it pays to
 * put three or four in one. In a small room that would take too long, so nobody waits.
 */
export function mergeWindowMs(limits: RelayLimits, people: number): number {
  const untilEnoughMs = UNTIL_ENOUGH_MS / people
  const awaitedMs = untilEnoughMs > limits.mergeWindowMs ? 0 : untilEnoughMs
  return Math.min(Math.max(awaitedMs, people / PEOPLE_A_MS), limits.mergeWindowMs)
}
