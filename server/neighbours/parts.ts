import { randomBytes } from 'node:crypto'

/** A notification must be shorter than 8000 bytes: https://www.postgresql.org/docs/17/sql-notify.html */
const MOST_BYTES = 7_900
/** Of the text before it is written in base64, which makes 4 characters of 3 bytes; the rest is for the heading. */
const PART_BYTES = 5_700
/** Texts of which parts are still missing; a relay that died while it spoke leaves one behind. */
const MOST_UNFINISHED = 200

/** A text as payloads of notifications: one that is short enough as it is, a longer one in parts. */
export function partsOf(text: string): string[] {
  if (Buffer.byteLength(text) < MOST_BYTES) return [`=${text}`]
  const bytes = Buffer.from(text, 'utf8')
  const id = randomBytes(6).toString('base64url')
  const count = Math.ceil(bytes.byteLength / PART_BYTES)
  return Array.from({ length: count }, (_, index) => (
    `${id}.${index}.${count}.${bytes.subarray(index * PART_BYTES, (index + 1) * PART_BYTES).toString('base64')}`))
}

/** Puts texts together again from their parts, in whatever order those come. */
export class Joiner {
  readonly #unfinished = new Map<string, (string | undefined)[]>()

  /** @returns the text that this payload completes; null while parts of it are missing, and for what is no part. */
  take(payload: string): string | null {
    if (payload.startsWith('=')) return payload.slice(1)
    const [id, index, count, chunk] = payload.split('.')
    if (id === undefined || chunk === undefined || !(Number(index) < Number(count)) || !(Number(count) <= 10_000)) return null
    const parts = this.#unfinished.get(id) ?? new Array<string | undefined>(Number(count)).fill(undefined)
    parts[Number(index)] = chunk
    this.#unfinished.set(id, parts)
    if (parts.includes(undefined)) {
      this.#forgetOldest()
      return null
    }
    this.#unfinished.delete(id)
    return Buffer.concat(parts.map((part) => Buffer.from(part as string, 'base64'))).toString('utf8')
  }

  #forgetOldest(): void {
    const [oldest] = this.#unfinished.keys()
    if (this.#unfinished.size > MOST_UNFINISHED && oldest !== undefined) this.#unfinished.delete(oldest)
  }
}
