import { z } from 'zod'
import { DOCUMENT_NAMES } from '../access/role.ts'

const key = { jobId: z.string(), document: z.enum(DOCUMENT_NAMES) }

/** One person's presence: the client id, its clock, and the state as JSON; null for "gone". */
const presenceEntry = z.tuple([z.number(), z.number(), z.string().nullable()])

/**
 * What relays on one store tell one another. It is news alone: whatever lasts stands in the store and is read there, so
 * news that is lost or comes twice does no harm.
 */
const newsSchema = z.discriminatedUnion('kind', [
  /** "I am here." Said now and then. */
  z.object({ kind: z.literal('here') }),
  /** "I am stopping." */
  z.object({ kind: z.literal('gone') }),
  /** "People are on this document here: tell me of yours." An answer asks for no answer. */
  z.object({ kind: z.literal('open'), ...key, isAnswer: z.boolean() }),
  z.object({ kind: z.literal('shut'), ...key }),
  /** The document's log has grown up to that sequence. */
  z.object({ kind: z.literal('rows'), ...key, sequence: z.number() }),
  z.object({ kind: z.literal('presence'), ...key, entries: z.array(presenceEntry) }),
  /** The pen of the job went to somebody else. */
  z.object({ kind: z.literal('pen'), jobId: z.string() }),
  /** The seat has another name or hangs on another link. */
  z.object({ kind: z.literal('seat'), seatId: z.string() }),
  z.object({ kind: z.literal('revoked'), linkIds: z.array(z.string()) }),
])
export type News = z.infer<typeof newsSchema>
export type PresenceEntry = z.infer<typeof presenceEntry>

const saidSchema = z.object({ from: z.string(), news: newsSchema })

/** News with the relay it comes from, as text for the line. */
export function writeNews(from: string, news: News): string {
  return JSON.stringify({ from, news })
}

/** Null for what this release does not know: a newer relay may say more. */
export function readNews(text: string): { readonly from: string; readonly news: News } | null {
  try {
    const said = saidSchema.safeParse(JSON.parse(text))
    return said.success ? said.data : null
  } catch {
    return null
  }
}
