import type { IncomingMessage } from 'node:http'
import type { z } from 'zod'
import { Problem } from './problems.ts'

/**
 * The JSON a request carries, checked.
 * @throws Problem when it is too large, not JSON, or not of that form (with the places).
 */
export async function readBody<Schema extends z.ZodType>(
  request: IncomingMessage, schema: Schema, maxBytes: number,
): Promise<z.infer<Schema>> {
  // A form of another site can post, but not with this type: a browser would ask us first.
  if (!/^application\/json\b/i.test(request.headers['content-type'] ?? '')) throw new Problem('not-json')
  const parsed = schema.safeParse(parseJson(await readBytes(request, maxBytes)))
  if (parsed.success) return parsed.data
  throw new Problem('bad-request', parsed.error.issues.slice(0, 20).map((issue) => ({
    path: issue.path.map(String).join('.'), message: issue.message,
  })))
}

/** The bytes a request carries. @throws Problem when there are too many. */
export async function readBytes(request: IncomingMessage, maxBytes: number): Promise<Buffer> {
  if (Number(request.headers['content-length'] ?? 0) > maxBytes) throw new Problem('too-large')
  const chunks: Buffer[] = []
  let total = 0
  for await (const chunk of request as AsyncIterable<Buffer>) {
    total += chunk.byteLength
    if (total > maxBytes) throw new Problem('too-large')
    chunks.push(chunk)
  }
  return Buffer.concat(chunks)
}

function parseJson(bytes: Buffer): unknown {
  try {
    return JSON.parse(bytes.toString('utf8')) as unknown
  } catch {
    throw new Problem('bad-json')
  }
}
