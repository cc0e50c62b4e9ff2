import { useState } from 'react'
import type { BallotOnSheet } from './useBallotHere.ts'

interface VoteOnProps {
  readonly ballot: BallotOnSheet
  readonly lookId: string
  readonly lookName: string
}

/** One's own vote on a look while the vote is closed; everybody's, with their reasons, once it is opened. */
export function VoteOn({ ballot: { view, send }, lookId, lookName }: VoteOnProps) {
  const [why, setWhy] = useState('')
  if (view === null || !view.ballot.lookIds.includes(lookId)) return null
  if (view.isOpened) {
    const votes = view.votes!.filter((vote) => vote.lookId === lookId)
    return (
      <div className="vote">
        <p className="vote-count">{votes.length === 0 ? 'No vote' : `${votes.length} ${votes.length === 1 ? 'vote' : 'votes'}`}</p>
        <ul>
          {votes.map(({ by, why: reason }) => <li key={by.seatId}><strong>{by.name}</strong>{reason === '' ? '' : `: ${reason}`}</li>)}
        </ul>
      </div>
    )
  }
  const isMine = view.hasVoted && view.ownVote?.lookId === lookId
  return (
    <form
      className="vote"
      onSubmit={(event) => {
        event.preventDefault()
        send({ do: 'ballot.vote', ballotId: view.id, lookId, why: why.trim() })
      }}
    >
      <button type="submit" className="button button-lined" aria-pressed={isMine} aria-label={`${isMine ? 'Your vote' : 'Vote'}: ${lookName}`}>{isMine ? 'Your vote' : 'This one'}</button>
      <input className="field vote-why" aria-label={`Why ${lookName}`} placeholder="Why (nobody reads it before the opening)" value={why} maxLength={300} onChange={(event) => setWhy(event.target.value)} />
    </form>
  )
}
