import { z } from 'zod'
import { commandAnswersSchema, type CommandAnswer } from '../../shared-core/notes/answer.ts'
import { roleSchema, seatInfoSchema, type SeatInfo } from './seat.ts'

/** The relay's answer, or one sentence on why there is none. `status` is null when nothing answered at all. */
export type Answer<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly status: number | null; readonly words: string }

const linkSchema = z.object({ role: roleSchema, url: z.string() })
export type RoleLink = z.infer<typeof linkSchema>

const newJobSchema = z.object({ jobId: z.string(), links: z.array(linkSchema) })
export type NewJob = z.infer<typeof newJobSchema>

/** A new job with a plan to begin with; its links are told once. */
export function createJob(plan: object): Promise<Answer<NewJob>> {
  return post('/api/jobs', { plan }, newJobSchema)
}

/** Takes a seat with a link's key. The key leaves this page in the body alone, never in an address. */
export function takeSeat(jobId: string, key: string, name: string): Promise<Answer<SeatInfo>> {
  return post('/api/seats', { jobId, key, name }, seatInfoSchema)
}

export function whoAmI(seatId: string): Promise<Answer<SeatInfo>> {
  return ask(`/s/${encodeURIComponent(seatId)}/me`, { method: 'GET' }, seatInfoSchema)
}

/** Hands the pen to a client's seat; null takes it back. */
export function movePen(seatId: string, toSeatId: string | null): Promise<Answer<unknown>> {
  return post(`/s/${encodeURIComponent(seatId)}/pen`, { toSeatId }, z.unknown())
}

/** A new link for a role. Links of that role made before seat nobody new; whoever sits stays. */
export function renewLink(seatId: string, role: RoleLink['role'], days: number): Promise<Answer<RoleLink>> {
  return post(`/s/${encodeURIComponent(seatId)}/links`, { action: 'renew', role, days }, linkSchema)
}

const madeLinksSchema = z.object({
  links: z.array(z.object({
    linkId: z.string(), role: roleSchema, state: z.enum(['open', 'closed', 'expired', 'revoked']),
    createdMs: z.number(), expiresMs: z.number(), seats: z.number(),
    people: z.array(z.object({ name: z.string(), cameMs: z.number() })),
  })),
})
export type MadeLink = z.infer<typeof madeLinksSchema>['links'][number]

/** Every link ever made for the job, with who came in by it. */
export function listLinks(seatId: string): Promise<Answer<{ readonly links: readonly MadeLink[] }>> {
  return post(`/s/${encodeURIComponent(seatId)}/links`, { action: 'list' }, madeLinksSchema)
}

/** Withdraws one link and everybody who came by it; the links as they are then. */
export function withdrawLink(seatId: string, linkId: string): Promise<Answer<{ readonly links: readonly MadeLink[] }>> {
  return post(`/s/${encodeURIComponent(seatId)}/links`, { action: 'withdraw', linkId }, madeLinksSchema)
}

/** Withdraws every link of a role and everybody who came by one, and makes a new link. */
export function withdrawLinks(seatId: string, role: RoleLink['role']): Promise<Answer<RoleLink>> {
  return post(`/s/${encodeURIComponent(seatId)}/links`, { action: 'revoke', role }, linkSchema)
}

const welcomeSchema = z.object({ demoRoles: z.array(roleSchema), newJobs: z.boolean() })
export type Welcome = z.infer<typeof welcomeSchema>

/** What the first page can offer on this relay. */
export function whatIsOffered(): Promise<Answer<Welcome>> {
  return ask('/api/welcome', { method: 'GET' }, welcomeSchema)
}

/** A seat at the demo job without a link, where the relay allows it. */
export function takeDemoSeat(role: RoleLink['role'], name: string): Promise<Answer<SeatInfo>> {
  return post('/api/demo-seat', { role, name }, seatInfoSchema)
}

/** The relay draws the pictures of a lock before it answers: on a slow machine, with six skins, minutes. */
const notesPatienceMs = 150_000

/** Sends what an outbox holds; one answer a command, in their order. */
export async function sendCommands(seatId: string, commands: readonly object[]): Promise<Answer<readonly CommandAnswer[]>> {
  const patience = commands.some((command) => 'do' in command && command.do === 'lock.make') ? notesPatienceMs : patienceMs
  const answer = await post(`/s/${encodeURIComponent(seatId)}/notes`, { commands }, commandAnswersSchema, patience)
  return answer.ok ? { ok: true, value: answer.value.answers } : answer
}

const keptPictureSchema = z.object({ hash: z.string() })

/** Has the relay keep a picture (PNG, JPEG, WebP), for a screen check; the name it is kept under. */
export function keepPicture(seatId: string, picture: Blob): Promise<Answer<{ readonly hash: string }>> {
  const request = { method: 'POST', headers: { 'content-type': picture.type }, body: picture }
  return ask(`/s/${encodeURIComponent(seatId)}/kept`, request, keptPictureSchema, notesPatienceMs)
}

/** Where a thing that the relay keeps is found: also the address of a picture of a lock. */
export function keptAddress(seatId: string, hash: string): string {
  return `/s/${encodeURIComponent(seatId)}/kept/${encodeURIComponent(hash)}`
}

function post<Value>(path: string, body: object, schema: z.ZodType<Value>, patience = patienceMs): Promise<Answer<Value>> {
  return ask(path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }, schema, patience)
}

const patienceMs = 10_000

const refusalSchema = z.object({ message: z.string() })

async function ask<Value>(path: string, request: RequestInit, schema: z.ZodType<Value>, patience = patienceMs): Promise<Answer<Value>> {
  try {
    const response = await fetch(path, { ...request, cache: 'no-store', signal: AbortSignal.timeout(patience) })
    const body: unknown = await response.json().catch(() => null)
    if (!response.ok) {
      const refusal = refusalSchema.safeParse(body)
      return { ok: false, status: response.status, words: refusal.success ? refusal.data.message : `The relay answered ${response.status}.` }
    }
    const read = schema.safeParse(body)
    if (read.success) return { ok: true, value: read.data }
    return { ok: false, status: response.status, words: 'The relay answered in a form this page does not know. Reload the page.' }
  } catch {
    return { ok: false, status: null, words: 'The relay does not answer. Check the network, then try again.' }
  }
}
