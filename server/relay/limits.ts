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

/** From so many people on a wait pays: with fewer, what arrives in a time that nobody notices is hardly ever two. */
const MANY_PEOPLE = 20
/**
 * Milliseconds times the square of the people: what they say and whom it must be told to both grow with their number, so
 * with a hundred a short wait brings together what with thirty takes one that is longer, and still not noticed.
 */
const WAIT_MS_BY_PEOPLE_SQUARED = 30_000

/** How long edits of a room wait for others once they come thick and fast: one message goes to everybody. */
export function mergeWindowMs(limits: RelayLimits, people: number): number {
  return people < MANY_PEOPLE ? 0 : Math.min(WAIT_MS_BY_PEOPLE_SQUARED / (people * people), limits.mergeWindowMs)
}
