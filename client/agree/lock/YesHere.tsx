import { useState } from 'react'
import { ask } from '../../session/pageStore.ts'
import { ownScreenCheck, type LockView } from '../../notes/engine/locks.ts'
import { useNotes, useNotesStore } from '../../notes/useNotes.ts'

/** One's own yes to a lock, with the screen it is given on. */
export function YesHere({ view }: { readonly view: LockView }) {
  const store = useNotesStore()
  const check = useNotes((notes) => ownScreenCheck(notes.kept, notes.seat.seatId)?.id ?? null)
  const isOnTheWay = useNotes((notes) => notes.onTheWay.some((command) => command.do === 'yes.add' && command.lockId === view.id))
  const [words, setWords] = useState('')
  if (view.hasSaidYes) return <p className="agreed-soft">You said yes to this lock.</p>
  return (
    <form
      className="yes-here"
      onSubmit={(event) => {
        event.preventDefault()
        store.getState().send({ do: 'yes.add', lockId: view.id, words: words.trim(), screenCheckId: check })
      }}
    >
      <input className="field" aria-label="Yes, and if something goes with it, what" placeholder="Yes, if…" maxLength={2000} value={words} onChange={(event) => setWords(event.target.value)} />
      <button type="submit" className="button button-main" disabled={isOnTheWay}>{isOnTheWay ? 'On its way…' : words.trim() === '' ? 'Yes' : 'Yes, with that'}</button>
      {check === null && (
        <p className="agreed-row agreed-soft">
          <span>This screen has not been checked, and the yes will say so.</span>
          <button type="button" className="button button-lined" onClick={() => ask({ kind: 'screen-check' })}>Check it</button>
        </p>
      )}
    </form>
  )
}
