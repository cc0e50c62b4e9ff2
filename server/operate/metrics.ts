import { collectDefaultMetrics, Counter, Gauge, Registry, type Metric } from 'prom-client'
import type { Relay } from '../relay/relay.ts'
import type { AppendTimes } from '../relay/tally.ts'

/**
 * What an operator needs to know of a relay, in the text format of Prometheus (prom-client). The relay counts in plain
 * numbers and is read when asked, so nothing of this costs anything where edits pass. No job, seat or person is a label.
 */
export class Metrics {
  readonly #registry = new Registry()

  constructor(relay: Relay) {
    const { tally } = relay
    this.#gauge('halfstop_people', 'Live connections: one a person and document', () => relay.people)
    this.#gauge('halfstop_rooms', 'Documents held in memory', () => relay.rooms)
    this.#gauge('halfstop_ready', '1 while people may be sent here: edits are kept and the relay is not stopping', () => Number(relay.isReady))
    this.#counter('halfstop_messages_total', 'Messages that came in', () => tally.messages)
    this.#counter('halfstop_received_bytes_total', 'Bytes of messages that came in', () => tally.receivedBytes)
    this.#counter('halfstop_edits_total', 'Edits kept and passed on', () => tally.edits)
    this.#counter('halfstop_edits_merged_total', 'Edits that went out in one message with an earlier one', () => tally.editsMerged)
    this.#counter('halfstop_deliveries_total', 'Edits passed on, counted once a connection, merged or not', () => tally.deliveries)
    this.#labelled('halfstop_sent_bytes_total', 'Bytes handed to sockets', ['carries'],
      () => Object.entries(tally.sentBytes).map(([carries, bytes]) => [{ carries }, bytes]))
    this.#labelled('halfstop_refusals_total', 'Refusals and closings by what was refused and the code it was told', ['what', 'code'],
      () => [...tally.refusals].map(([name, times]) => {
        const [what = '', code = ''] = name.split('/')
        return [{ what, code }, times]
      }))
    this.#histogram('halfstop_store_append_seconds', 'From asking the store to keep edits until they are kept', tally.appends)
  }

  /** Adds what the process itself uses: CPU, memory, event loop lag, garbage collection. Once a process, as it never ends. */
  watchProcess(): void {
    collectDefaultMetrics({ register: this.#registry })
  }

  get contentType(): string {
    return this.#registry.contentType
  }

  text(): Promise<string> {
    return this.#registry.metrics()
  }

  #gauge(name: string, help: string, read: () => number): void {
    new Gauge({ name, help, registers: [this.#registry], collect() { this.set(read()) } })
  }

  #counter(name: string, help: string, read: () => number): void {
    this.#labelled(name, help, [], () => [[{}, read()]])
  }

  /** prom-client's own histogram costs some microseconds an observation: more than all else that is done to count an edit. */
  #histogram(name: string, help: string, { bounds, counts, totals }: AppendTimes): void {
    const get = async () => {
      let below = 0
      const buckets = counts.map((count, range) => (
        { metricName: `${name}_bucket`, labels: { le: String(bounds[range] ?? '+Inf') }, value: (below += count) }))
      const rest = [['sum', totals.seconds], ['count', below]] as const
      return { name, help, type: 'histogram', values: [...buckets, ...rest.map(([what, value]) => ({ metricName: `${name}_${what}`, labels: {}, value }))] }
    }
    this.#registry.registerMetric({ name, help, get } as unknown as Metric)
  }

  /** The whole count is read anew each time; a counter of prom-client only knows steps. */
  #labelled(name: string, help: string, labelNames: string[], read: () => (readonly [Record<string, string>, number])[]): void {
    new Counter({
      name, help, labelNames, registers: [this.#registry],
      collect() {
        this.reset()
        for (const [labels, count] of read()) this.inc(labels, count)
      },
    })
  }
}
