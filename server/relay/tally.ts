import type { DocumentLog } from '../store/store.ts'

/** What a refusal was about: an edit, a whole connection, or an HTTP request. */
export type RefusalKind = 'edit' | 'connection' | 'request'

/**
 * What the relay has done since it started, as plain numbers: counting must cost nothing where edits pass. Whoever
 * publishes them reads them when asked.
 */
export class Tally {
  /** Messages of any kind that came in, and their bytes. */
  messages = 0
  receivedBytes = 0
  /** Edits taken: kept in the store and passed on. */
  edits = 0
  /** Edits that went out in one message with an earlier one. */
  editsMerged = 0
  /** One edit passed on to one connection, merged or not. */
  deliveries = 0
  /** Bytes handed to sockets, by what they carry. */
  readonly sentBytes = { edits: 0, presence: 0, documents: 0 }
  /** How often each refusal was said, by `kind/code`. */
  readonly refusals = new Map<string, number>()
  /** Told of every append to the store, with how long it took. */
  onAppend: (seconds: number) => void = () => {}

  /** Edits of one merge went to so many connections as one message. */
  passedOn(edits: number, connections: number, messageBytes: number): void {
    this.edits += edits
    this.editsMerged += Math.max(0, edits - 1)
    this.deliveries += edits * connections
    this.sentBytes.edits += messageBytes * connections
  }

  refused(kind: RefusalKind, code: string): void {
    const name = `${kind}/${code}`
    this.refusals.set(name, (this.refusals.get(name) ?? 0) + 1)
  }
}

/** The same log, with how long each append took told to the tally. */
export function timedLog(log: DocumentLog, tally: Tally): DocumentLog {
  return {
    readDocument: (key, afterSequence) => log.readDocument(key, afterSequence),
    compact: (key, snapshot, upToSequence) => log.compact(key, snapshot, upToSequence),
    async append(key, update, onlyBehind) {
      const startedMs = performance.now()
      const sequence = await log.append(key, update, onlyBehind)
      tally.onAppend((performance.now() - startedMs) / 1_000)
      return sequence
    },
  }
}
