import { useState } from 'react'
import { inSequence } from '../../../shared-core/notes/notes.ts'
import { useNotes, useReopening } from '../../notes/useNotes.ts'
import { WordFor } from './WordFor.tsx'

/** Everything somebody meant by "That one", the latest first; each opens as it was. */
export function ThatOnes({ onLookedAt }: { readonly onLookedAt: () => void }) {
  const notes = useNotes((board) => board.notes)
  const kept = useNotes((board) => board.kept)
  const ownSeatId = useNotes((board) => board.seat.seatId)
  const reopening = useReopening()
  const [trouble, setTrouble] = useState('')
  const ones = inSequence(notes, 'thatOnes').toReversed()
  if (ones.length === 0) return <p className="agreed-soft">Nobody has said “That one” yet. The button under the Frame keeps the look exactly as it is that instant.</p>
  return (
    <>
      <ul className="that-ones">
        {ones.map(([id, { lookName, by, words, asSeen }]) => (
          <li key={id}>
            <span className="that-one-said">
              <strong>{by.name}</strong>, {new Date(by.atMs).toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' })}: {lookName}{words === '' ? '' : `, ${words}`}
              {asSeen === false && <span className="agreed-soft"> · the plan had moved on as it arrived</span>}
            </span>
            {by.seatId === ownSeatId && <WordFor id={id} lookName={lookName} words={words} />}
            {kept.thatOnes[id] === undefined ? <span className="agreed-soft">on its way</span> : (
              <button
                type="button"
                className="button button-lined"
                aria-label={`Look at what ${by.name} meant, ${lookName}`}
                onClick={() => void reopening.thatOne(id).then((why) => (why === null ? onLookedAt() : setTrouble(why)))}
              >
                Look
              </button>
            )}
          </li>
        ))}
      </ul>
      {trouble !== '' && <p role="alert">{trouble}</p>}
    </>
  )
}
