import type { DocumentLog } from '../store/store.ts'

/** What a refusal was about: an edit, a whole connection, or an HTTP request. */
export type RefusalKind = 'edit' | 'connection' | 'request'

/** From a tenth of a millisecond, as a local file takes, to a database that hardly answers. */
const APPEND_BOUNDS_SECONDS = [0.0001, 0.00025, 0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 1, 5]

/** How long appends to the store took: counted in ranges, as a histogram of Prometheus is. */
export class AppendTimes {
  readonly bounds: readonly number[] = APPEND_BOUNDS_SECONDS
  /** How many were no longer than the bound of that index, and longer than the one before; last those beyond all. */
  readonly counts: number[] = [...APPEND_BOUNDS_SECONDS, Infinity].map(() => 0)
  readonly totals = { seconds: 0 }

  took(seconds: number): void {
    this.totals.seconds += seconds
    let range = 0
    while (seconds > (this.bounds[range] ?? Infinity)) range += 1
    this.counts[range] = (this.counts[range] ?? 0) + 1
  }
}

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
  readonly appends = new AppendTimes()

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
    append(key, update, onlyBehind) {
      const startedMs = performance.now()
      return log.append(key, update, onlyBehind).then((sequence) => {
        tally.appends.took((performance.now() - startedMs) / 1_000)
        return sequence
      })
    },
  }
}
