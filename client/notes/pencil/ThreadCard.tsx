import { ChevronLeft, ChevronRight } from 'lucide-react'
import { useEffect, useRef, useState, type KeyboardEvent } from 'react'
import { NOTES_LIMITS } from '../../../shared-core/notes/limits.ts'
import { useNotes, useNotesStore } from '../useNotes.ts'
import { ColourChanged } from './ColourChanged.tsx'
import { threadBeside, type NoteList, type NumberedThread } from './noteOrder.ts'
import { readThread, usePencil } from './pencilStore.ts'
import { Said } from './Said.tsx'
import './ThreadCard.css'
import { useKeydown } from './useKeydown.ts'
import { useMarkRead } from './useNoteList.ts'
import { usePinWords } from './usePinWords.ts'

/** One note with all that was said under it, and what can be said now. */
export function ThreadCard({ thread, list }: { readonly thread: NumberedThread; readonly list: NoteList }) {
  const { id, note, number, state, replies } = thread
  const store = useNotesStore()
  const onTheWay = useNotes(({ onTheWayIds }) => onTheWayIds)
  const isHidden = usePencil(({ hiddenIds }) => hiddenIds.has(id))
  const wordsOf = usePinWords()
  const markRead = useMarkRead()
  const card = useRef<HTMLElement>(null)
  const heading = useRef<HTMLHeadingElement>(null)
  const [text, setText] = useState('')
  // The order as it was when reading began: what is read moves down the list, and going on must not jump with it.
  const [order] = useState(list)

  useEffect(() => heading.current?.focus({ preventScroll: true }), [])
  // What is said while it is being read was seen too.
  useEffect(() => markRead(thread), [markRead, thread])

  function reply(): void {
    if (store.getState().send({ do: 'note.reply', noteId: id, text }) !== null) setText('')
  }

  function onReplyKey(event: KeyboardEvent): void {
    if (event.key !== 'Enter' || event.shiftKey || event.nativeEvent.isComposing) return
    event.preventDefault()
    reply()
  }

  function goTo(step: 1 | -1): void {
    const next = threadBeside(order, id, step)
    if (next !== null) readThread(next.id)
  }

  useKeydown(card, (event) => {
    if (event.target instanceof HTMLTextAreaElement) return
    if (event.key === 'ArrowRight') goTo(1)
    else if (event.key === 'ArrowLeft') goTo(-1)
  })

  const say = (next: 'open' | 'answered' | 'closed') => store.getState().send({ do: 'note.state', noteId: id, state: next })
  const [before, after] = [threadBeside(order, id, -1), threadBeside(order, id, 1)]
  return (
    <article ref={card} className="thread-card" aria-label={`Note ${number}`}>
      <header className="thread-card-head">
        <button type="button" className="button thread-card-all" onClick={() => readThread(null)}><ChevronLeft size={15} aria-hidden />All notes</button>
        <span className="thread-card-steps">
          <button type="button" className="button button-bare" aria-label="Previous note" aria-disabled={before === null} onClick={() => goTo(-1)}><ChevronLeft size={17} aria-hidden /></button>
          <button type="button" className="button button-bare" aria-label="Next note" aria-disabled={after === null} onClick={() => goTo(1)}><ChevronRight size={17} aria-hidden /></button>
        </span>
      </header>
      <h3 ref={heading} tabIndex={-1} className="thread-card-where">
        <span className="note-mark" data-state={state} data-new={false} aria-hidden><span className="note-mark-face">{number}</span></span>
        <span className="heard">{`Note ${number}, `}</span>
        <span className="thread-card-pin">{wordsOf(note.pin, note.lookId)}</span>
        <span className="thread-card-state">{[isHidden ? 'behind' : '', state === 'open' ? '' : state].filter((word) => word !== '').join(' · ')}</span>
      </h3>
      <ColourChanged thread={thread} />
      <ol className="thread-card-said">
        <li><Said by={note.by} text={note.text} isOnTheWay={onTheWay.has(id)} colour={note.colour} /></li>
        {replies.map((each) => <li key={each.id}><Said by={each.reply.by} text={each.reply.text} isOnTheWay={onTheWay.has(each.id)} colour={null} /></li>)}
      </ol>
      <div className="thread-card-reply">
        <textarea
          className="note-field"
          rows={1}
          aria-label={`Reply to note ${number}`}
          placeholder="Reply"
          maxLength={NOTES_LIMITS.textCharacters}
          value={text}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={onReplyKey}
        />
        <button type="button" className="button button-lined" aria-disabled={text.trim() === ''} onClick={reply}>Reply</button>
      </div>
      <div className="thread-card-states">
        {state === 'open' && <button type="button" className="button button-lined" onClick={() => say('answered')}>Answered</button>}
        {state !== 'closed' && <button type="button" className="button button-lined" onClick={() => say('closed')}>Close</button>}
        {state !== 'open' && <button type="button" className="button button-lined" onClick={() => say('open')}>Reopen</button>}
      </div>
    </article>
  )
}
