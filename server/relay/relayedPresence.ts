import type { PresenceEntry } from '../neighbours/news.ts'
import { goneEntry, type AwarenessEntry } from './awarenessEntries.ts'

/** Presence as relays tell it to one another. */
export function newsOf(entries: readonly AwarenessEntry[]): PresenceEntry[] {
  return entries.map(({ clientId, clock, json }) => {
    const state = Buffer.from(json.buffer, json.byteOffset, json.byteLength).toString('utf8')
    return [clientId, clock, state === 'null' ? null : state]
  })
}

/** The same as the wire to clients has it. */
export function entriesOf(news: readonly PresenceEntry[]): AwarenessEntry[] {
  return news.map(([clientId, clock, state]) => (
    state === null ? goneEntry(clientId, clock) : { clientId, clock, json: Buffer.from(state, 'utf8') }))
}
