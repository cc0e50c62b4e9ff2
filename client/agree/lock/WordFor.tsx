import { useState } from 'react'
import { useNotesStore } from '../../notes/useNotes.ts'

const MOST_CHARACTERS = 60

/** A word by which one's own "That one" is told from another, given or changed after; the moment itself stays. */
export function WordFor({ id, lookName, words }: { readonly id: string; readonly lookName: string; readonly words: string }) {
  const store = useNotesStore()
  const [typed, setTyped] = useState<string | null>(null)
  if (typed === null) {
    return <button type="button" className="button" aria-label={`${words === '' ? 'Give it a word:' : 'Other word for'} your ${lookName}${words === '' ? '' : `, ${words}`}`} onClick={() => setTyped(words)}>{words === '' ? 'Give it a word' : 'Other word'}</button>
  }
  return (
    <form
      className="agreed-row"
      onSubmit={(event) => {
        event.preventDefault()
        store.getState().send({ do: 'that-one.words', thatOneId: id, words: typed.trim() })
        setTyped(null)
      }}
    >
      {/* eslint-disable-next-line jsx-a11y/no-autofocus -- it opened because its button was pressed */}
      <input className="field" aria-label="A word for it" maxLength={MOST_CHARACTERS} autoFocus data-own-escape value={typed} onChange={(event) => setTyped(event.target.value)} onKeyDown={(event) => event.key === 'Escape' && setTyped(null)} />
      <button type="submit" className="button button-lined">Keep</button>
      <button type="button" className="button" onClick={() => setTyped(null)}>Cancel</button>
    </form>
  )
}
