import type { DocumentName, Role } from '../access/role.ts'

/** One shared document of one job. */
export interface DocumentKey {
  readonly jobId: string
  readonly document: DocumentName
}

/** A document as kept: applying the updates in order to an empty document gives its state. */
export interface KeptDocument {
  readonly updates: readonly Uint8Array[]
  /** Sequence of the last update; 0 when nothing was ever kept. */
  readonly lastSequence: number
}

export interface JobRecord {
  readonly jobId: string
  readonly createdMs: number
  /** The client's seat that holds the pen; null while it is with the photographer. */
  readonly penSeatId: string | null
}

/** A secret link of a role. The key itself is kept nowhere: only its SHA-256. */
export interface LinkRecord {
  readonly linkId: string
  readonly jobId: string
  readonly role: Role
  readonly keyHash: Uint8Array
  readonly createdMs: number
  readonly expiresMs: number
  /** From then on it seats nobody new; those already seated stay. */
  readonly closedMs: number | null
  /** From then on it seats nobody and everybody it ever seated is out. */
  readonly revokedMs: number | null
}

/** One person's place at a job, made by opening a link. */
export interface SeatRecord {
  readonly seatId: string
  readonly jobId: string
  readonly linkId: string
  readonly role: Role
  readonly name: string
  readonly secretHash: Uint8Array
  readonly createdMs: number
}

export interface NewJob {
  readonly jobId: string
  readonly createdMs: number
  readonly links: readonly LinkRecord[]
  /** First contents, one update a document. */
  readonly documents: readonly { readonly document: DocumentName; readonly update: Uint8Array }[]
}

/**
 * Keeps the documents' updates.
 *
 * Every method of every part may throw only {@link StoreError} (as a rejection), and after a rejection nothing of what
 * was asked has happened. All are asynchronous so that a database across a network fits behind the same promises.
 */
export interface DocumentLog {
  /**
   * What is kept of a document, in order: all, or what stands behind `afterSequence`. Updates that were folded into one
   * stand behind it when the last of them does, so nothing is ever missed. A document never written gives no updates:
   * that is no error.
   * @param afterSequence 0 by default. With nothing behind it, `lastSequence` is that same number.
   */
  readDocument(key: DocumentKey, afterSequence?: number): Promise<KeptDocument>

  /**
   * Keeps one update after all earlier ones of its document. Once resolved, it survives the death of this process
   * (kill -9); with the strict setting of a store that has one, also loss of power.
   * @param onlyBehind keep it only as the very next after this sequence; otherwise reject with trouble `conflict`
   * @returns the update's sequence: 1 for a document's first, then rising by one. Where other relays write to the same
   * store, those of others may stand between two of one's own.
   */
  append(key: DocumentKey, update: Uint8Array, onlyBehind?: number): Promise<number>

  /**
   * Puts `snapshot` in place of every update up to and including `upToSequence`. Later ones stay untouched, whether
   * appended before or after this call; `lastSequence` never changes. A reader sees either all old or all new.
   */
  compact(key: DocumentKey, snapshot: Uint8Array, upToSequence: number): Promise<void>
}

/** Keeps who may come to which job. The same promises about errors as {@link DocumentLog}. */
export interface JobRegister {
  /** Keeps the job, its links and first contents, all or nothing. Rejects when the job exists. */
  createJob(job: NewJob): Promise<void>
  job(jobId: string): Promise<JobRecord | null>
  /** `penSeatId` null gives the pen back to the photographer. */
  setPen(jobId: string, penSeatId: string | null): Promise<void>

  /** All links ever made for the job, oldest first, the dead ones too. */
  linksOf(jobId: string): Promise<readonly LinkRecord[]>
  link(linkId: string): Promise<LinkRecord | null>
  addLink(link: LinkRecord): Promise<void>
  /** Sets the moments a link was closed or revoked; a moment once set stays. */
  endLink(linkId: string, ended: { readonly closedMs?: number; readonly revokedMs?: number }): Promise<void>

  addSeat(seat: SeatRecord): Promise<void>
  seat(seatId: string): Promise<SeatRecord | null>
  /** How many seats a link has made: links are limited in that. */
  seatCount(linkId: string): Promise<number>
  /** The seats a link has made, by the moment they were taken. */
  seatsOf(linkId: string): Promise<readonly SeatRecord[]>
  /** Moves a seat to another link of its job, so that revoking the first no longer ends it. */
  moveSeat(seatId: string, linkId: string): Promise<void>
  renameSeat(seatId: string, name: string): Promise<void>
}

/** What the relay keeps whole beside the documents: pictures, snapshots of plans, attachments. */
export interface KeptThing {
  /** SHA-256 of the bytes in hexadecimal: its name. */
  readonly hash: string
  readonly mediaType: string
  readonly bytes: Uint8Array
}

/** One vote, withheld until its ballot is opened. */
export interface SealedVote {
  readonly ballotId: string
  /** The command it came by. */
  readonly commandId: string
  readonly seatId: string
  /** JSON of what was said, for whoever opens the ballot. */
  readonly vote: string
}

/**
 * Keeps what belongs to a job and must not lie in its documents: large things, and votes nobody may see yet. The same
 * promises about errors as {@link DocumentLog}; what was kept survives as an append does.
 */
export interface KeptThings {
  /** Keeps a thing under its hash. The same thing twice is one; the first media type stays. */
  keep(jobId: string, thing: KeptThing): Promise<void>
  /** A thing of this job; null when the job has none of that name, whatever other jobs have. */
  kept(jobId: string, hash: string): Promise<KeptThing | null>
  /** How much a job keeps. */
  keptTotal(jobId: string): Promise<{ readonly things: number; readonly bytes: number }>
  /** Keeps a vote. The same command of a seat again changes nothing; a later command of a seat takes the place of its earlier. */
  sealVote(jobId: string, vote: SealedVote): Promise<void>
  /** The last vote of each seat, in the order in which those seats first voted. */
  sealedVotes(jobId: string, ballotId: string): Promise<readonly SealedVote[]>
}

export interface Store extends DocumentLog, JobRegister, KeptThings {
  /** Resolves when an append of ordinary size would be kept right now, having tried; rejects with the trouble if not. */
  probe(): Promise<void>
  /** Lets go of everything once what was accepted is kept. Later calls reject with trouble `closed`. */
  close(): Promise<void>
}
