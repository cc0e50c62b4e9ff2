import type { Ballot, Vote } from '../../../shared-core/notes/entries.ts'
import { inSequence, type Notes } from '../../../shared-core/notes/notes.ts'
import type { SeatInfo } from '../../connection/seat.ts'
import type { OwnVote, OwnVotes } from './ownVotes.ts'

/** A vote as one person may see it. */
export interface BallotView {
  readonly id: string
  readonly ballot: Ballot
  readonly isOpened: boolean
  /** This person has voted, here or on another device. */
  readonly hasVoted: boolean
  /** How; null when they have not, or did so on another device and nothing is opened yet. */
  readonly ownVote: Pick<OwnVote, 'lookId' | 'why'> | null
  /** How many have voted: all that is told before the opening. */
  readonly voted: number
  /** Everybody's, once opened; null before. */
  readonly votes: readonly Vote[] | null
  /** Votes a look, in the ballot's order, and for none of them (null) last; null before the opening. */
  readonly tally: readonly { readonly lookId: string | null; readonly votes: number }[] | null
  /** The photographer, or who asked the question, while it is closed. */
  readonly mayOpen: boolean
}

/** All votes of the job, the earliest first. */
export function ballotsOf(notes: Notes, ownVotes: OwnVotes, seat: SeatInfo): readonly BallotView[] {
  return inSequence(notes, 'ballots').map(([id, ballot]) => {
    const votes = ballot.opened?.votes ?? null
    const told = votes?.find(({ by }) => by.seatId === seat.seatId)
    const hasVoted = ballot.voters.some(({ seatId }) => seatId === seat.seatId)
    const remembered = hasVoted && Object.hasOwn(ownVotes, id) ? ownVotes[id] : undefined
    return {
      id, ballot, votes, hasVoted,
      isOpened: votes !== null,
      ownVote: (votes === null ? remembered : told) ?? null,
      voted: ballot.voters.length,
      tally: votes && [...ballot.lookIds, null].map((lookId) => ({ lookId, votes: votes.filter((vote) => vote.lookId === lookId).length })),
      mayOpen: votes === null && (seat.role === 'photographer' || ballot.by.seatId === seat.seatId),
    }
  })
}
