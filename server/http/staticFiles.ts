import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { extname, join, relative, sep } from 'node:path'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import type { IncomingMessage, ServerResponse } from 'node:http'

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8', '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml', '.png': 'image/png', '.jpg': 'image/jpeg', '.webp': 'image/webp', '.ico': 'image/x-icon',
  '.woff2': 'font/woff2', '.ttf': 'font/ttf', '.txt': 'text/plain; charset=utf-8', '.map': 'application/json; charset=utf-8',
}
const ALREADY_COMPRESSED = new Set(['.png', '.jpg', '.webp', '.ico', '.woff2'])
/** Below one network packet, compressing saves nothing. */
const LEAST_COMPRESSED_BYTES = 1_000
/** vite puts a hash of the content in these names, so what such a name gives never changes. */
const HASHED_FOLDER = '/assets/'

type Coding = 'br' | 'gzip' | 'identity'

/** Whether Accept-Encoding names a coding without refusing it: a weight of 0 is "not acceptable" (RFC 9110, 12.4.2). */
function isAccepted(coding: Coding, acceptEncoding: string): boolean {
  return acceptEncoding.toLowerCase().split(',').some((one) => {
    const [name, ...parameters] = one.split(';').map((part) => part.trim())
    return name === coding && !parameters.some((parameter) => /^q=0(\.0{0,3})?$/.test(parameter))
  })
}

/** One file in memory, with each of its codings made when first wanted. */
class StaticFile {
  readonly type: string
  readonly etag: string
  readonly isHashed: boolean
  readonly #plain: Buffer
  readonly #isWorthCompressing: boolean
  readonly #bodies = new Map<Coding, Promise<Buffer>>()

  constructor(diskPath: string, urlPath: string) {
    const ending = extname(diskPath)
    this.#plain = readFileSync(diskPath)
    this.type = TYPES[ending] ?? 'application/octet-stream'
    this.etag = `"${createHash('sha256').update(this.#plain).digest('base64url').slice(0, 22)}"`
    this.isHashed = urlPath.startsWith(HASHED_FOLDER)
    this.#isWorthCompressing = this.#plain.byteLength >= LEAST_COMPRESSED_BYTES && !ALREADY_COMPRESSED.has(ending)
  }

  codingFor(acceptEncoding: string): Coding {
    if (!this.#isWorthCompressing) return 'identity'
    if (isAccepted('br', acceptEncoding)) return 'br'
    return isAccepted('gzip', acceptEncoding) ? 'gzip' : 'identity'
  }

  body(coding: Coding): Promise<Buffer> {
    const made = this.#bodies.get(coding) ?? compress(this.#plain, coding)
    this.#bodies.set(coding, made)
    return made
  }

  async prepare(): Promise<void> {
    if (this.#isWorthCompressing) await Promise.all([this.body('br'), this.body('gzip')])
  }
}

/** The built client, held in memory and compressed once: it is a few megabytes. */
export class StaticFiles {
  readonly #files: ReadonlyMap<string, StaticFile>

  /** Reads every file below the folder; a folder that is not there gives none. */
  constructor(folder: string) {
    this.#files = new Map(filesBelow(folder).map((diskPath) => {
      const urlPath = `/${relative(folder, diskPath).split(sep).join('/')}`
      return [urlPath, new StaticFile(diskPath, urlPath)]
    }))
  }

  has(path: string): boolean {
    return this.#files.has(path)
  }

  /** Compresses everything ahead of the first visit, one file at a time so that visits meanwhile are not held up. */
  async prepare(): Promise<void> {
    for (const file of this.#files.values()) await file.prepare()
  }

  /** Answers with a file that `has` said is there. */
  async send(path: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
    const file = this.#files.get(path)
    if (file === undefined) throw new Error(`no such file: ${path}`)
    const headers = {
      'ETag': file.etag,
      'Vary': 'Accept-Encoding',
      'Cache-Control': file.isHashed ? 'public, max-age=31536000, immutable' : 'no-cache',
    }
    if (request.headers['if-none-match'] === file.etag) {
      response.writeHead(304, headers).end()
      return
    }
    const coding = file.codingFor(String(request.headers['accept-encoding'] ?? ''))
    const body = await file.body(coding)
    response.writeHead(200, {
      ...headers, 'Content-Type': file.type, 'Content-Length': body.byteLength,
      ...(coding === 'identity' ? {} : { 'Content-Encoding': coding }),
    })
    response.end(request.method === 'HEAD' ? undefined : body)
  }
}

async function compress(plain: Buffer, coding: Coding): Promise<Buffer> {
  switch (coding) {
    case 'identity': return plain
    case 'gzip': return promisify(gzip)(plain, { level: 9 })
    case 'br': return promisify(brotliCompress)(plain, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } })
  }
}

function filesBelow(folder: string): string[] {
  if (!existsSync(folder)) return []
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name)
    return entry.isDirectory() ? filesBelow(path) : [path]
  })
}
