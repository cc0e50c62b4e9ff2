import { useState } from 'react'
import { useNotesStore } from '../../notes/useNotes.ts'
import { INSTEAD_OF_YES_WORDS, insteadOfYes, type InsteadOfYes, type SpokenAbout } from './notYet.ts'
import './lock.css'

/** The text of a "Not yet" or a question, which becomes a note on the look. Opened by its button; Escape leaves it. */
export function InsteadOfYesHere({ kind, about, onDone }: { readonly kind: InsteadOfYes; readonly about: SpokenAbout; readonly onDone: (wasSaid: boolean) => void }) {
  const store = useNotesStore()
  const [text, setText] = useState('')
  const asks = kind === 'question'
  return (
    <form
      className="yes-here"
      onSubmit={(event) => {
        event.preventDefault()
        if ((!asks || text.trim() !== '') && store.getState().send(insteadOfYes(kind, about, text)) !== null) onDone(true)
      }}
    >
      {/* eslint-disable-next-line jsx-a11y/no-autofocus -- it opened because its button was pressed */}
      <input className="field" aria-label={asks ? 'Your question' : 'What is still missing'} placeholder={asks ? 'What do you want to know?' : 'What is still missing?'} maxLength={1900} autoFocus data-own-escape value={text} onChange={(event) => setText(event.target.value)} onKeyDown={(event) => event.key === 'Escape' && onDone(false)} />
      <span className="agreed-row">
        <button type="submit" className="button button-main" disabled={asks && text.trim() === ''}>{asks ? 'Ask' : INSTEAD_OF_YES_WORDS[kind]}</button>
        <button type="button" className="button" onClick={() => onDone(false)}>Cancel</button>
      </span>
    </form>
  )
}
