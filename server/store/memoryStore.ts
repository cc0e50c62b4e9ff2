import type { DocumentKey, JobRecord, KeptDocument, KeptThing, LinkRecord, NewJob, SealedVote, SeatRecord, Store } from './store.ts'
import { StoreError } from './storeError.ts'

interface LoggedUpdate {
  readonly sequence: number
  readonly update: Uint8Array
}

/** Keeps everything in this process and loses it with it: for tests, and for measuring the relay without a disk. */
export class MemoryStore implements Store {
  readonly #documents = new Map<string, { updates: LoggedUpdate[]; lastSequence: number }>()
  readonly #jobs = new Map<string, JobRecord>()
  readonly #links = new Map<string, LinkRecord>()
  readonly #seats = new Map<string, SeatRecord>()
  readonly #kept = new Map<string, Map<string, KeptThing>>()
  readonly #votes = new Map<string, SealedVote[]>()
  #closed = false

  async readDocument(key: DocumentKey, afterSequence = 0): Promise<KeptDocument> {
    this.#mustBeOpen()
    const kept = this.#documents.get(keyText(key))?.updates.filter((logged) => logged.sequence > afterSequence) ?? []
    return { updates: kept.map((logged) => logged.update), lastSequence: kept.at(-1)?.sequence ?? afterSequence }
  }

  async append(key: DocumentKey, update: Uint8Array, onlyBehind?: number): Promise<number> {
    this.#mustBeOpen()
    const kept = this.#documents.get(keyText(key)) ?? { updates: [], lastSequence: 0 }
    if (onlyBehind !== undefined && kept.lastSequence !== onlyBehind) throw new StoreError('conflict', 'the document has moved on')
    this.#documents.set(keyText(key), kept)
    kept.lastSequence += 1
    kept.updates.push({ sequence: kept.lastSequence, update: update.slice() })
    return kept.lastSequence
  }

  async compact(key: DocumentKey, snapshot: Uint8Array, upToSequence: number): Promise<void> {
    this.#mustBeOpen()
    const kept = this.#documents.get(keyText(key))
    if (kept === undefined) return
    const replaced = kept.updates.filter((logged) => logged.sequence <= upToSequence)
    const last = replaced.at(-1)
    if (last === undefined) return
    const later = kept.updates.slice(replaced.length)
    kept.updates = [{ sequence: last.sequence, update: snapshot.slice() }, ...later]
  }

  async createJob(job: NewJob): Promise<void> {
    this.#mustBeOpen()
    if (this.#jobs.has(job.jobId)) throw new StoreError('other', 'the job exists')
    this.#jobs.set(job.jobId, { jobId: job.jobId, createdMs: job.createdMs, penSeatId: null })
    for (const link of job.links) this.#links.set(link.linkId, link)
    for (const { document, update } of job.documents) await this.append({ jobId: job.jobId, document }, update)
  }

  async job(jobId: string): Promise<JobRecord | null> {
    this.#mustBeOpen()
    return this.#jobs.get(jobId) ?? null
  }

  async setPen(jobId: string, penSeatId: string | null): Promise<void> {
    this.#mustBeOpen()
    const job = this.#jobs.get(jobId)
    if (job !== undefined) this.#jobs.set(jobId, { ...job, penSeatId })
  }

  async linksOf(jobId: string): Promise<readonly LinkRecord[]> {
    this.#mustBeOpen()
    return [...this.#links.values()].filter((link) => link.jobId === jobId)
  }

  async link(linkId: string): Promise<LinkRecord | null> {
    this.#mustBeOpen()
    return this.#links.get(linkId) ?? null
  }

  async addLink(link: LinkRecord): Promise<void> {
    this.#mustBeOpen()
    this.#links.set(link.linkId, link)
  }

  async endLink(linkId: string, ended: { readonly closedMs?: number; readonly revokedMs?: number }): Promise<void> {
    this.#mustBeOpen()
    const link = this.#links.get(linkId)
    if (link === undefined) return
    this.#links.set(linkId, {
      ...link,
      closedMs: link.closedMs ?? ended.closedMs ?? null,
      revokedMs: link.revokedMs ?? ended.revokedMs ?? null,
    })
  }

  async addSeat(seat: SeatRecord): Promise<void> {
    this.#mustBeOpen()
    this.#seats.set(seat.seatId, seat)
  }

  async seat(seatId: string): Promise<SeatRecord | null> {
    this.#mustBeOpen()
    return this.#seats.get(seatId) ?? null
  }

  async seatCount(linkId: string): Promise<number> {
    this.#mustBeOpen()
    return [...this.#seats.values()].filter((seat) => seat.linkId === linkId).length
  }

  async seatsOf(linkId: string): Promise<readonly SeatRecord[]> {
    this.#mustBeOpen()
    const made = [...this.#seats.values()].filter((seat) => seat.linkId === linkId)
    return made.sort((a, b) => a.createdMs - b.createdMs || (a.seatId < b.seatId ? -1 : 1))
  }

  async moveSeat(seatId: string, linkId: string): Promise<void> {
    this.#mustBeOpen()
    const seat = this.#seats.get(seatId)
    if (seat !== undefined) this.#seats.set(seatId, { ...seat, linkId })
  }

  async renameSeat(seatId: string, name: string): Promise<void> {
    this.#mustBeOpen()
    const seat = this.#seats.get(seatId)
    if (seat !== undefined) this.#seats.set(seatId, { ...seat, name })
  }

  async keep(jobId: string, { hash, mediaType, bytes }: KeptThing): Promise<void> {
    this.#mustBeOpen()
    if (!this.#jobs.has(jobId)) throw new StoreError('other', 'there is no such job')
    const things = this.#kept.get(jobId) ?? new Map<string, KeptThing>()
    this.#kept.set(jobId, things)
    if (!things.has(hash)) things.set(hash, { hash, mediaType, bytes: bytes.slice() })
  }

  async kept(jobId: string, hash: string): Promise<KeptThing | null> {
    this.#mustBeOpen()
    return this.#kept.get(jobId)?.get(hash) ?? null
  }

  async keptTotal(jobId: string): Promise<{ things: number; bytes: number }> {
    this.#mustBeOpen()
    const things = [...(this.#kept.get(jobId)?.values() ?? [])]
    return { things: things.length, bytes: things.reduce((total, { bytes }) => total + bytes.byteLength, 0) }
  }

  async sealVote(jobId: string, vote: SealedVote): Promise<void> {
    this.#mustBeOpen()
    if (!this.#jobs.has(jobId)) throw new StoreError('other', 'there is no such job')
    const votes = this.#votes.get(jobId) ?? []
    this.#votes.set(jobId, votes)
    const isKnown = votes.some((one) => one.ballotId === vote.ballotId && one.seatId === vote.seatId && one.commandId === vote.commandId)
    if (!isKnown) votes.push(vote)
  }

  async sealedVotes(jobId: string, ballotId: string): Promise<readonly SealedVote[]> {
    this.#mustBeOpen()
    const lastOfSeat = new Map<string, SealedVote>()
    for (const vote of this.#votes.get(jobId) ?? []) if (vote.ballotId === ballotId) lastOfSeat.set(vote.seatId, vote)
    return [...lastOfSeat.values()]
  }

  async probe(): Promise<void> {
    this.#mustBeOpen()
  }

  async close(): Promise<void> {
    this.#closed = true
  }

  #mustBeOpen(): void {
    if (this.#closed) throw new StoreError('closed', 'the store was closed')
  }
}

function keyText({ jobId, document }: DocumentKey): string {
  return `${jobId}/${document}`
}
