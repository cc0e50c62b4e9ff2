import pg from 'pg'
import { postgresConfig, postgresErrorOf } from '../store/postgresDatabase.ts'
import { StoreError } from '../store/storeError.ts'
import type { Line, LineEnd } from './line.ts'
import { Joiner, partsOf } from './parts.ts'

const CHANNEL = 'halfstop'
const TRY_AGAIN_MS = 250
/** So many payloads go in one round trip. */
const MOST_TOGETHER = 200
/** More than that waiting is more than the database carries: what is lost then is found by looking. */
const MOST_WAITING = 5_000

/**
 * A line over LISTEN and NOTIFY, on one connection of its own. What is said while a round trip is on its way goes
 * together in the next. The notifications are transactions of their own that write nothing: one within a transaction
 * that writes would make all such commits of the whole database wait for one another.
 */
export class PostgresLine implements Line {
  readonly #url: string
  readonly #joiner = new Joiner()
  #end: LineEnd | null = null
  #client: pg.Client | null = null
  #waiting = new Map<string, string>()
  #unplaced = 0
  #saying: Promise<void> | null = null
  #retry: NodeJS.Timeout | undefined
  #isClosed = false

  /** @param url the same as the store's */
  constructor(url: string) {
    this.#url = url
  }

  async open(end: LineEnd): Promise<void> {
    this.#end = end
    try {
      await this.#connect()
    } catch (thrown) {
      this.#isClosed = true
      throw postgresErrorOf(thrown)
    }
    end.opened()
  }

  say(text: string, place?: string): void {
    if (this.#client === null || this.#waiting.size >= MOST_WAITING) return
    const name = place ?? `#${++this.#unplaced}`
    // To its end: between what is said before and after it, the order stays.
    this.#waiting.delete(name)
    this.#waiting.set(name, text)
    this.#saying ??= this.#sayAll().finally(() => { this.#saying = null })
  }

  async close(): Promise<void> {
    if (this.#isClosed) return
    this.#isClosed = true
    clearTimeout(this.#retry)
    await this.#saying
    const client = this.#client
    this.#client = null
    await client?.end().catch(() => {})
  }

  async #connect(): Promise<void> {
    const client = new pg.Client(postgresConfig(this.#url))
    client.on('error', (error) => this.#lost(client, error))
    client.on('end', () => this.#lost(client, new Error('connection ended')))
    client.on('notification', ({ payload }) => {
      const text = this.#joiner.take(payload ?? '')
      if (text !== null && client === this.#client) this.#end?.heard(text)
    })
    try {
      await client.connect()
      this.#client = client
      await client.query(`LISTEN ${CHANNEL}`)
    } catch (thrown) {
      this.#client = null
      client.end().catch(() => {})
      throw thrown
    }
  }

  #lost(client: pg.Client, error: Error): void {
    if (client !== this.#client) return
    this.#client = null
    this.#waiting.clear()
    client.end().catch(() => {})
    if (this.#isClosed) return
    this.#end?.lost(new StoreError('unreachable', error.message, { cause: error }))
    this.#tryAgain()
  }

  #tryAgain(): void {
    clearTimeout(this.#retry)
    this.#retry = setTimeout(async () => {
      try {
        await this.#connect()
      } catch {
        if (!this.#isClosed) this.#tryAgain()
        return
      }
      if (this.#isClosed) return void this.#client?.end().catch(() => {})
      this.#end?.opened()
    }, TRY_AGAIN_MS)
    this.#retry.unref()
  }

  async #sayAll(): Promise<void> {
    // At the end of this turn, so that all that is said in it goes together.
    await new Promise((resolve) => setImmediate(resolve))
    while (this.#waiting.size > 0 && this.#client !== null) {
      const client = this.#client
      const together = [...this.#waiting].slice(0, MOST_TOGETHER)
      for (const [name] of together) this.#waiting.delete(name)
      try {
        await client.query({
          name: 'say', text: 'SELECT pg_notify($1, payload) FROM unnest($2::text[]) AS payload',
          values: [CHANNEL, together.flatMap(([, text]) => partsOf(text))],
        })
      } catch (thrown) {
        this.#lost(client, thrown as Error)
      }
    }
  }
}
