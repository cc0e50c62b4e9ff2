import type { IncomingMessage, ServerResponse } from 'node:http'
import type { z } from 'zod'
import { originCalled, type OriginRule } from '../access/origin.ts'
import { readBody, readBytes } from './body.ts'
import { PROBLEMS, Problem } from './problems.ts'

/** One request and its answer, with what routes need of both. */
export class Exchange {
  readonly request: IncomingMessage
  readonly response: ServerResponse
  readonly path: string
  readonly #origin: OriginRule
  readonly #proxyHops: number
  readonly #maxBodyBytes: number

  constructor(request: IncomingMessage, response: ServerResponse, terms: { origin: OriginRule; proxyHops: number; maxBodyBytes: number }) {
    this.request = request
    this.response = response
    this.path = (request.url ?? '/').split('?', 1)[0] ?? '/'
    this.#origin = terms.origin
    this.#proxyHops = terms.proxyHops
    this.#maxBodyBytes = terms.maxBodyBytes
  }

  /** @throws Problem */
  body<Schema extends z.ZodType>(schema: Schema): Promise<z.infer<Schema>> {
    return readBody(this.request, schema, this.#maxBodyBytes)
  }

  /** What the request carries, as it came. @throws Problem when it is larger than that. */
  bytes(maxBytes: number): Promise<Buffer> {
    return readBytes(this.request, maxBytes)
  }

  /** Whom to count tries against: the caller's address, or the one a believed proxy speaks for. */
  get address(): string {
    const forwarded = String(this.request.headers['x-forwarded-for'] ?? '').split(',').map((part) => part.trim())
    const spokenFor = this.#proxyHops > 0 ? forwarded.at(-this.#proxyHops) : undefined
    return spokenFor || (this.request.socket.remoteAddress ?? 'unknown')
  }

  /** The secret link of a role. The key sits after `#`, where browsers keep it to themselves. */
  linkTo(jobId: string, key: string): string {
    return `${originCalled(this.request.headers, this.#origin) ?? ''}/j/${jobId}#${key}`
  }

  json(status: number, value: unknown): void {
    const body = Buffer.from(JSON.stringify(value), 'utf8')
    this.response.writeHead(status, {
      'Content-Type': 'application/json; charset=utf-8', 'Content-Length': body.byteLength, 'Cache-Control': 'no-store',
    })
    this.response.end(this.request.method === 'HEAD' ? undefined : body)
  }

  text(contentType: string, text: string): void {
    this.response.writeHead(200, { 'Content-Type': contentType, 'Cache-Control': 'no-store' })
    this.response.end(this.request.method === 'HEAD' ? undefined : text)
  }

  /** Bytes of a type that the page may show but never run, which never change under their name. */
  kept(mediaType: string, bytes: Uint8Array): void {
    this.response.writeHead(200, {
      'Content-Type': mediaType, 'Content-Length': bytes.byteLength, 'Cache-Control': 'private, max-age=31536000, immutable',
      'Content-Disposition': 'inline', 'X-Content-Type-Options': 'nosniff',
    })
    this.response.end(this.request.method === 'HEAD' ? undefined : bytes)
  }

  problem({ code, message, details }: Problem): void {
    this.json(PROBLEMS[code].status, { code, message, ...(details.length > 0 ? { details } : {}) })
  }
}
