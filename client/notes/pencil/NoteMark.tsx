import type { CSSProperties } from 'react'
import './NoteMark.css'
import type { NumberedThread } from './noteOrder.ts'
import { readThread, usePencil } from './pencilStore.ts'
import { useMarkRead } from './useNoteList.ts'

interface NoteMarkProps {
  readonly thread: NumberedThread
  readonly isNew: boolean
  readonly className?: string
  readonly style?: CSSProperties
}

/** A note's small numbered pencil mark: a ring; a filled flag while there is something new in it. Pressed, its thread is read. */
export function NoteMark({ thread, isNew, className = '', style }: NoteMarkProps) {
  const isOpen = usePencil(({ openId, listShown }) => listShown && openId === thread.id)
  const markRead = useMarkRead()
  return (
    <button
      type="button"
      className={`note-mark ${className}`}
      style={style}
      data-note={thread.id}
      data-new={isNew}
      data-state={thread.state}
      aria-pressed={isOpen}
      aria-label={markWords(thread, isNew)}
      onClick={() => {
        readThread(thread.id)
        markRead(thread)
      }}
    >
      <span className="note-mark-face" aria-hidden>{thread.number}</span>
    </button>
  )
}

/** "Note 3, unread: Ines: warmer here, please; 2 replies" */
export function markWords({ number, note, replies, state }: NumberedThread, isNew: boolean): string {
  const more = replies.length === 0 ? '' : replies.length === 1 ? '; 1 reply' : `; ${replies.length} replies`
  return `Note ${number}${isNew ? ', unread' : ''}${state === 'open' ? '' : `, ${state}`}: ${note.by.name}: ${note.text}${more}`
}
