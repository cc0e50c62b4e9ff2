import { z } from 'zod'
import { readKept, writeKept } from '../../connection/kept.ts'

const ownVoteSchema = z.object({ commandId: z.string(), lookId: z.string().nullable(), why: z.string() })
/** How this person voted, as this device remembers it: the relay tells nobody before the vote is opened. */
export type OwnVote = z.infer<typeof ownVoteSchema>

const votesSchema = z.record(z.string(), ownVoteSchema)
/** By ballot. */
export type OwnVotes = Readonly<Record<string, OwnVote>>

export interface OwnVotesKept {
  read(): OwnVotes
  keep(votes: OwnVotes): void
}

/** Kept on this device for a seat. */
export function ownVotesOf(seatId: string): OwnVotesKept {
  const key = `halfstop.votes.${seatId}`
  return { read: () => readKept(key, votesSchema, {}), keep: (votes) => writeKept(key, votes) }
}
