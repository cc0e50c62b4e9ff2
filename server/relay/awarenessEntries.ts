import * as decoding from 'lib0/decoding'
import * as encoding from 'lib0/encoding'

/** One client's line in an awareness message: https://github.com/yjs/y-protocols, awareness.js. */
export interface AwarenessEntry {
  /** The Y.Doc's client id that speaks. */
  readonly clientId: number
  /** Rises with every change of that client's state. */
  readonly clock: number
  /** The state as JSON in UTF-8, still unread: most entries that arrive are echoes which nobody needs to read. */
  readonly json: Uint8Array
}

/** JSON of "gone". */
const NULL_JSON = new TextEncoder().encode('null')

/** @throws when the bytes are no awareness update. */
export function readAwarenessEntries(update: Uint8Array): AwarenessEntry[] {
  const decoder = decoding.createDecoder(update)
  const entries: AwarenessEntry[] = []
  for (let left = decoding.readVarUint(decoder); left > 0; left--) {
    entries.push({
      clientId: decoding.readVarUint(decoder),
      clock: decoding.readVarUint(decoder),
      json: decoding.readVarUint8Array(decoder),
    })
  }
  return entries
}

export function writeAwarenessEntries(entries: readonly AwarenessEntry[]): Uint8Array {
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, entries.length)
  for (const { clientId, clock, json } of entries) {
    encoding.writeVarUint(encoder, clientId)
    encoding.writeVarUint(encoder, clock)
    encoding.writeVarUint8Array(encoder, json)
  }
  return encoding.toUint8Array(encoder)
}

/** The line that takes a client's state away; valid at the clock its state has. */
export function goneEntry(clientId: number, clock: number): AwarenessEntry {
  return { clientId, clock, json: NULL_JSON }
}
