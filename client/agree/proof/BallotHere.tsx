import { useState } from 'react'
import { useNotes } from '../../notes/useNotes.ts'
import type { BallotOnSheet } from './useBallotHere.ts'

/** The question put, how many have answered, and opening it; or asking for a vote. */
export function BallotHere({ here, lookIds }: { readonly here: BallotOnSheet; readonly lookIds: readonly string[] }) {
  const [question, setQuestion] = useState('')
  const [isAsking, setAsking] = useState(false)
  const ownSeat = useNotes((notes) => notes.seat.seatId)
  const { view, send } = here

  function ask(): void {
    send({ do: 'ballot.open', question: question.trim() || 'Which one?', lookIds: [...lookIds] })
    setAsking(false)
    setQuestion('')
  }

  if (isAsking) {
    return (
      <form className="ballot" onSubmit={(event) => { event.preventDefault(); ask() }}>
        <label className="ballot-ask">
          <span>Ask everybody, about the {lookIds.length} looks here</span>
          {/* eslint-disable-next-line jsx-a11y/no-autofocus -- it opened because its button was pressed */}
          <input className="field" value={question} maxLength={200} placeholder="Which one?" autoFocus onChange={(event) => setQuestion(event.target.value)} />
        </label>
        <button type="button" className="button" onClick={() => setAsking(false)}>Leave it</button>
        <button type="submit" className="button button-main">Ask for votes</button>
      </form>
    )
  }
  const { isOpened, ballot } = view ?? {}
  return (
    <section className="ballot" aria-label="Vote" data-asked={view !== null && !isOpened}>
      {view === null ? <p className="ballot-words">Nobody sees how another voted before the votes are opened together.</p> : (
        <p className="ballot-words" role="status">
          <strong>{ballot!.question}</strong> {votedWords(view.voted)}{isOpened ? `, opened by ${ballot!.opened!.by.name}` : view.hasVoted ? ', yours is in' : ''}
        </p>
      )}
      {view !== null && !isOpened && (
        <button type="button" className="button" aria-pressed={view.ownVote?.lookId === null && view.hasVoted} onClick={() => send({ do: 'ballot.vote', ballotId: view.id, lookId: null, why: '' })}>None of them</button>
      )}
      {view !== null && view.mayOpen && (
        <button type="button" className="button button-main" disabled={view.voted === 0} onClick={() => send({ do: 'ballot.reveal', ballotId: view.id })}>
          Open the votes{ballot!.by.seatId === ownSeat ? '' : ` asked by ${ballot!.by.name}`}
        </button>
      )}
      {(view === null || isOpened) && <button type="button" className="button button-lined" onClick={() => setAsking(true)}>Ask for votes…</button>}
    </section>
  )
}

function votedWords(count: number): string {
  return count === 0 ? 'nobody has voted yet' : `${count} ${count === 1 ? 'person has' : 'people have'} voted`
}
