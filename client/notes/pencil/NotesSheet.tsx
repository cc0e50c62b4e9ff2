import { ChevronDown } from 'lucide-react'
import { useEffect, useRef } from 'react'
import { useBoard } from '../../session/useBoard.ts'
import { useNotes, useNotesStore } from '../useNotes.ts'
import { NoteRow } from './NoteRow.tsx'
import './NotesSheet.css'
import type { NumberedThread } from './noteOrder.ts'
import { hideNotes, readThread, setPencil, usePencil } from './pencilStore.ts'
import { ThreadCard } from './ThreadCard.tsx'
import { useKeydown } from './useKeydown.ts'
import { useMarkRead, useNoteList } from './useNoteList.ts'

/** All notes of the job, or one of them with all that was said under it. */
export function NotesSheet() {
  const openId = usePencil((state) => state.openId)
  const { threads, list, newCount, isNew } = useNoteList()
  const isHere = useNotes((state) => state.isHere)
  const sheet = useRef<HTMLElement>(null)
  const lastRead = useRef<string | null>(null)
  const open = threads.find(({ id }) => id === openId)

  // Out of the sheet the focus goes back to where it came from.
  useEffect(() => {
    const before = document.activeElement
    return () => {
      if ((before instanceof HTMLElement || before instanceof SVGElement) && before.isConnected) before.focus({ preventScroll: true })
    }
  }, [])

  // On the list: the note that was read, or the first.
  useEffect(() => {
    if (openId === null) {
      const row = lastRead.current === null ? null : sheet.current?.querySelector<HTMLElement>(`.note-row[data-note="${CSS.escape(lastRead.current)}"]`)
      ;(row?.offsetParent ? row : sheet.current?.querySelector<HTMLElement>('.note-row, .notes-sheet-none button'))?.focus({ preventScroll: true })
    }
    lastRead.current = openId
  }, [openId])

  useKeydown(sheet, (event) => {
    if (event.key !== 'Escape') return
    event.preventDefault()
    event.stopPropagation()
    if (openId === null) hideNotes()
    else readThread(null)
  })

  return (
    <>
      <div className="detail-line notes-sheet-line" data-pencil-own>
        <h2 className="detail-line-words">Notes <span className="notes-sheet-count">{newCount === 0 ? 'all read' : `${newCount} unread`}</span></h2>
        <button type="button" className="button" onClick={hideNotes}>
          Put away
          <ChevronDown size={15} aria-hidden />
        </button>
      </div>
      <aside ref={sheet} id="notes-sheet" className="detail-sheet notes-sheet" aria-label="Notes" data-pencil-own>
        {open ? <ThreadCard key={open.id} thread={open} list={list} /> : (
          <div>
            <Undelivered />
            {list.first.length === 0 && list.closed.length === 0 && (
              <div className="notes-sheet-none">
                <p>{isHere ? 'No notes yet' : 'The notes are on their way'}</p>
                <button type="button" className="button button-lined" onClick={() => setPencil(true)}>Take the pencil</button>
              </div>
            )}
            <Rows threads={list.first} isNew={isNew} />
            {list.closed.length > 0 && (
              <details className="notes-sheet-closed">
                <summary>{list.closed.length === 1 ? '1 closed' : `${list.closed.length} closed`}</summary>
                <Rows threads={list.closed} isNew={isNew} />
              </details>
            )}
          </div>
        )}
      </aside>
    </>
  )
}

/** One stop a row; up and down go through them. */
function Rows({ threads, isNew }: { readonly threads: readonly NumberedThread[]; readonly isNew: (thread: NumberedThread) => boolean }) {
  const markRead = useMarkRead()
  const lookId = useBoard((state) => state.lookId)
  const looks = useBoard((state) => state.plan.looks)
  const showLook = useBoard((state) => state.showLook)

  const list = useRef<HTMLUListElement>(null)
  useKeydown(list, (event) => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
    if (step === 0) return
    const all = [...list.current!.closest('.notes-sheet')!.querySelectorAll<HTMLElement>('.note-row')].filter((row) => row.offsetParent !== null)
    const next = all[all.indexOf(document.activeElement as HTMLElement) + step]
    if (next === undefined) return
    event.preventDefault()
    next.focus()
  })

  return (
    <ul ref={list} className="notes-sheet-rows">
      {threads.map((thread) => (
        <li key={thread.id}>
          <NoteRow
            thread={thread}
            isNew={isNew(thread)}
            lookName={thread.note.lookId === lookId ? null : (looks[thread.note.lookId]?.name ?? 'a look that is gone')}
            onRead={() => {
              if (thread.note.lookId !== lookId && looks[thread.note.lookId] !== undefined) showLook(thread.note.lookId)
              readThread(thread.id)
              markRead(thread)
            }}
          />
        </li>
      ))}
    </ul>
  )
}

/** What could not be sent: it stays until the person has decided. */
function Undelivered() {
  const refused = useNotes((state) => state.refused)
  const outlivesPage = useNotes((state) => state.outlivesPage)
  const waits = useNotes((state) => state.onTheWay.length > 0)
  const store = useNotesStore()
  return (
    <>
      {waits && !outlivesPage && <p className="notes-sheet-warning">This browser keeps nothing: leave the page open until your notes are sent.</p>}
      {refused.map(({ command, words, mayTryAgain }) => (
        <div key={command.id} className="notes-sheet-refused">
          <p>{'text' in command ? `“${command.text}”: ` : ''}{words}</p>
          {mayTryAgain && <button type="button" className="button button-lined" onClick={() => store.getState().again(command.id)}>Try again</button>}
          <button type="button" className="button" onClick={() => store.getState().forget(command.id)}>Drop it</button>
        </div>
      ))}
    </>
  )
}
