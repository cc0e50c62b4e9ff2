import type { NewJob, LinkRecord, SeatRecord, Store } from '../store/store.ts'
import { penKept } from './penKept.ts'
import { ROLES, type Role } from './role.ts'
import type { Pen, Seat } from './seat.ts'
import { hashOfSecret, isSameHash, newPublicId, newSecret } from './secrets.ts'

/** Why somebody is not let in. */
export type NotAdmitted = 'noSeat' | 'withdrawn' | 'expired'

/** Why a link's key seats nobody. */
export type NotSeated = 'wrongKey' | 'tooManySeats' | 'withdrawn' | 'expired'

/** A seat just taken, with the secret that is its owner's alone and told only here. */
export interface TakenSeat {
  readonly seat: Seat
  readonly secret: string
}

/** Told of what must be felt by live connections at once. */
export interface AccessListener {
  penMoved(jobId: string, pen: Pen): void
  seatRenamed(seatId: string, name: string): void
  /** Everybody seated by these links is out. */
  linksRevoked(linkIds: ReadonlySet<string>): void
  /** The seat now hangs on another link, with that link's end. */
  seatMoved(seatId: string, linkId: string, expiresMs: number): void
}

export interface LinkSummary {
  /** Public: it names the link and opens nothing. */
  readonly linkId: string
  readonly role: Role
  readonly state: 'open' | 'closed' | 'expired' | 'revoked'
  readonly createdMs: number
  readonly expiresMs: number
  readonly seats: number
  /** Who came in by it and when, the first first; no more than {@link MOST_NAMED}. */
  readonly people: readonly { readonly name: string; readonly cameMs: number }[]
}

/** A leaked link may have seated hundreds; a list of more names than this is read by nobody. */
const MOST_NAMED = 20

export interface AccessTerms {
  readonly linkLifetimeMs: number
  readonly seatsPerLink: number
}

/** Who may come to which job: links, seats and the pen. Keys and secrets pass through and are kept only as hashes. */
export class Access {
  readonly #store: Store
  readonly #terms: AccessTerms
  readonly #now: () => number
  readonly #listeners = new Set<AccessListener>()

  constructor(store: Store, terms: AccessTerms, now: () => number = Date.now) {
    this.#store = store
    this.#terms = terms
    this.#now = now
  }

  listen(listener: AccessListener): void {
    this.#listeners.add(listener)
  }

  /** Makes a job with one link a role. The keys are given out here and never again. */
  async createJob(documents: NewJob['documents'], jobId = newPublicId()): Promise<{ jobId: string; keys: Record<Role, string> }> {
    const made = ROLES.map((role) => this.#newLink(jobId, role))
    await this.#store.createJob({ jobId, createdMs: this.#now(), links: made.map(({ link }) => link), documents })
    return { jobId, keys: Object.fromEntries(made.map(({ link, key }) => [link.role, key])) as Record<Role, string> }
  }

  /** Whether that key would seat somebody in that role right now. */
  async opens(jobId: string, key: string, role: Role): Promise<boolean> {
    const link = await this.#linkOf(jobId, key)
    return link?.role === role && this.#stateOf(link) === 'open'
  }

  /** Seats a person by a link's key. An unknown job and a wrong key give the same answer. */
  async takeSeat(jobId: string, key: string, name: string): Promise<TakenSeat | NotSeated> {
    const link = await this.#linkOf(jobId, key)
    if (link === undefined) return 'wrongKey'
    const state = this.#stateOf(link)
    if (state !== 'open') return state === 'expired' ? 'expired' : 'withdrawn'
    if ((await this.#store.seatCount(link.linkId)) >= this.#terms.seatsPerLink) return 'tooManySeats'
    const secret = newSecret()
    const record: SeatRecord = {
      seatId: newPublicId(), jobId: link.jobId, linkId: link.linkId, role: link.role, name,
      secretHash: hashOfSecret(secret), createdMs: this.#now(),
    }
    await this.#store.addSeat(record)
    return { seat: seatOf(record, link), secret }
  }

  /** The seat, for whoever brings its secret. */
  async admit(seatId: string, secret: string | null): Promise<Seat | NotAdmitted> {
    const record = await this.#store.seat(seatId)
    if (record === null || secret === null) return 'noSeat'
    if (!isSameHash(record.secretHash, hashOfSecret(secret))) return 'noSeat'
    const link = await this.#store.link(record.linkId)
    if (link === null || link.revokedMs !== null) return 'withdrawn'
    return this.#now() >= link.expiresMs ? 'expired' : seatOf(record, link)
  }

  async penOf(jobId: string): Promise<Pen> {
    return penKept(this.#store, jobId)
  }

  /**
   * Hands the pen to a client's seat, or with null (or a photographer's seat) takes it back. Only the photographer
   * hands over; whoever holds it may give it back.
   */
  async movePen(mover: Seat, toSeatId: string | null): Promise<Pen | 'notYours' | 'noSuchClient'> {
    const receiver = toSeatId === null ? null : await this.#store.seat(toSeatId)
    const isGivenBack = receiver === null ? toSeatId === null : receiver.role === 'photographer' && receiver.jobId === mover.jobId
    const holder = await this.penOf(mover.jobId)
    if (mover.role !== 'photographer' && !(isGivenBack && holder?.seatId === mover.seatId)) return 'notYours'
    if (!isGivenBack && (receiver === null || receiver.jobId !== mover.jobId || receiver.role !== 'client')) return 'noSuchClient'
    const pen = isGivenBack || receiver === null ? null : { seatId: receiver.seatId, name: receiver.name }
    await this.#store.setPen(mover.jobId, pen?.seatId ?? null)
    this.#tell((listener) => listener.penMoved(mover.jobId, pen))
    return pen
  }

  async rename(seat: Seat, name: string): Promise<void> {
    await this.#store.renameSeat(seat.seatId, name)
    this.#tell((listener) => listener.seatRenamed(seat.seatId, name))
    const pen = await this.penOf(seat.jobId)
    if (pen?.seatId === seat.seatId) this.#tell((listener) => listener.penMoved(seat.jobId, pen))
  }

  /** Every link of the job, oldest first, without keys: those are known to nobody but who holds them. */
  async links(jobId: string): Promise<LinkSummary[]> {
    const links = await this.#store.linksOf(jobId)
    return Promise.all(links.map(async (link) => {
      const seats = await this.#store.seatsOf(link.linkId)
      return {
        linkId: link.linkId, role: link.role, state: this.#stateOf(link), createdMs: link.createdMs, expiresMs: link.expiresMs,
        seats: seats.length,
        people: seats.slice(0, MOST_NAMED).map(({ name, createdMs }) => ({ name, cameMs: createdMs })),
      }
    }))
  }

  /**
   * A fresh link for a role. Earlier ones of the role seat nobody new; those seated by them stay.
   * @param lifetimeMs how long it and its seats are good; at most, and by default, what the relay allows
   */
  async renewLink(jobId: string, role: Role, lifetimeMs?: number): Promise<string> {
    const earlier = (await this.#store.linksOf(jobId)).filter((link) => link.role === role)
    const { link, key } = this.#newLink(jobId, role, lifetimeMs)
    await this.#store.addLink(link)
    for (const each of earlier) await this.#store.endLink(each.linkId, { closedMs: this.#now() })
    return key
  }

  /**
   * Withdraws every link of a role: whoever was seated by one is out at once, but for the revoker's own seat, or a job
   * could be left without anybody. Gives the key of a fresh link for the role.
   */
  async revokeLinks(revoker: Seat, role: Role): Promise<string> {
    const earlier = (await this.#store.linksOf(revoker.jobId)).filter((link) => link.role === role)
    const { link: fresh, key } = this.#newLink(revoker.jobId, role)
    await this.#store.addLink(fresh)
    if (revoker.role === role) {
      await this.#store.moveSeat(revoker.seatId, fresh.linkId)
      this.#tell((listener) => listener.seatMoved(revoker.seatId, fresh.linkId, fresh.expiresMs))
    }
    const endedMs = this.#now()
    for (const link of earlier) await this.#store.endLink(link.linkId, { closedMs: endedMs, revokedMs: endedMs })
    this.#tell((listener) => listener.linksRevoked(new Set(earlier.map((link) => link.linkId))))
    if (role === 'client') await this.#penFallsBack(revoker.jobId)
    return key
  }

  /**
   * Withdraws one link: whoever was seated by it is out at once, and nobody else. The revoker's own link is not
   * withdrawn in this way, or a job could be left without anybody.
   */
  async withdrawLink(revoker: Seat, linkId: string): Promise<'withdrawn' | 'noSuchLink' | 'ownLink'> {
    const link = (await this.#store.linksOf(revoker.jobId)).find((each) => each.linkId === linkId)
    if (link === undefined) return 'noSuchLink'
    if (linkId === revoker.linkId) return 'ownLink'
    const pen = await this.penOf(revoker.jobId)
    const holder = pen === null ? null : await this.#store.seat(pen.seatId)
    const endedMs = this.#now()
    await this.#store.endLink(linkId, { closedMs: endedMs, revokedMs: endedMs })
    this.#tell((listener) => listener.linksRevoked(new Set([linkId])))
    if (holder?.linkId === linkId) await this.#penFallsBack(revoker.jobId)
    return 'withdrawn'
  }

  /** Looks at every link of the job, so that the time taken does not tell which one matched. */
  async #linkOf(jobId: string, key: string): Promise<LinkRecord | undefined> {
    const keyHash = hashOfSecret(key)
    return (await this.#store.linksOf(jobId)).filter((link) => isSameHash(link.keyHash, keyHash)).at(0)
  }

  async #penFallsBack(jobId: string): Promise<void> {
    if ((await this.penOf(jobId)) === null) return
    await this.#store.setPen(jobId, null)
    this.#tell((listener) => listener.penMoved(jobId, null))
  }

  #newLink(jobId: string, role: Role, lifetimeMs = this.#terms.linkLifetimeMs): { link: LinkRecord; key: string } {
    const key = newSecret()
    const createdMs = this.#now()
    const link = {
      linkId: newPublicId(), jobId, role, keyHash: hashOfSecret(key), createdMs,
      expiresMs: createdMs + Math.min(lifetimeMs, this.#terms.linkLifetimeMs), closedMs: null, revokedMs: null,
    }
    return { link, key }
  }

  #stateOf(link: LinkRecord): LinkSummary['state'] {
    if (link.revokedMs !== null) return 'revoked'
    if (this.#now() >= link.expiresMs) return 'expired'
    return link.closedMs !== null ? 'closed' : 'open'
  }

  #tell(say: (listener: AccessListener) => void): void {
    for (const listener of this.#listeners) say(listener)
  }
}

function seatOf(record: SeatRecord, link: LinkRecord): Seat {
  return {
    seatId: record.seatId, jobId: record.jobId, linkId: record.linkId, role: record.role, name: record.name,
    expiresMs: link.expiresMs,
  }
}
