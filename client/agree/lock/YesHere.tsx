import { useState } from 'react'
import type { LockView } from '../../notes/engine/locks.ts'
import { useNotes, useNotesStore } from '../../notes/useNotes.ts'
import { InsteadOfYesHere } from './InsteadOfYesHere.tsx'
import { INSTEAD_OF_YES_WORDS, type InsteadOfYes } from './notYet.ts'
import { ScreenUnchecked, useOwnScreenCheck } from './ScreenUnchecked.tsx'

/** One's own yes to a lock, with the screen it is given on; or what is still in its way. */
export function YesHere({ view }: { readonly view: LockView }) {
  const store = useNotesStore()
  const check = useOwnScreenCheck()
  const isOnTheWay = useNotes((notes) => notes.onTheWay.some((command) => command.do === 'yes.add' && command.lockId === view.id))
  const [words, setWords] = useState('')
  const [instead, setInstead] = useState<InsteadOfYes | null>(null)
  const [said, setSaid] = useState('')
  const others = (Object.keys(INSTEAD_OF_YES_WORDS) as InsteadOfYes[]).map((kind) => (
    <button key={kind} type="button" className="button button-lined" onClick={() => { setInstead(kind); setSaid('') }}>{INSTEAD_OF_YES_WORDS[kind]}</button>
  ))
  if (instead !== null) {
    return (
      <InsteadOfYesHere
        kind={instead}
        about={{ lookId: view.lock.lookId, lockNumber: view.lock.number }}
        onDone={(wasSaid) => {
          setInstead(null)
          setSaid(wasSaid ? 'It stands among the notes of the look.' : '')
        }}
      />
    )
  }
  const after = said === '' ? null : <p className="agreed-soft" role="status">{said}</p>
  if (view.hasSaidYes) return <><p className="agreed-row agreed-soft"><span>You said yes to this lock.</span>{others}</p>{after}</>
  return (
    <>
      <form
        className="yes-here"
        onSubmit={(event) => {
          event.preventDefault()
          store.getState().send({ do: 'yes.add', lockId: view.id, words: words.trim(), screenCheckId: check })
        }}
      >
        <input className="field" aria-label="Yes, and if something goes with it, what" placeholder="Yes, if…" maxLength={2000} value={words} onChange={(event) => setWords(event.target.value)} />
        <span className="agreed-row">
          <button type="submit" className="button button-main" disabled={isOnTheWay}>{isOnTheWay ? 'On its way…' : words.trim() === '' ? 'Yes' : 'Yes, with that'}</button>
          {others}
        </span>
      </form>
      {after}
      <ScreenUnchecked words="This screen has not been checked, and the yes will say so." />
    </>
  )
}
