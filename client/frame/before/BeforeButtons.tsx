import { Bookmark, BookmarkCheck } from 'lucide-react'
import { useEffect, type KeyboardEvent } from 'react'
import { useBoard } from '../../session/useBoard.ts'
import './BeforeButtons.css'

/** Hold one to see the Frame as it was before the last change; the other keeps this moment to compare with instead. */
export function BeforeButtons() {
  const hasBefore = useBoard((board) => board.before?.looks[board.lookId] !== undefined)
  const kept = useBoard((board) => board.beforeKept)
  const sees = useBoard((board) => board.seesBefore)
  const see = useBoard((board) => board.seeBefore)
  const keep = useBoard((board) => board.keepBefore)
  useEffect(() => () => see(false), [see])

  function onKey(event: KeyboardEvent, isDown: boolean): void {
    if (event.key !== ' ' && event.key !== 'Enter') return
    event.preventDefault()
    if (!event.repeat) see(isDown)
  }

  return (
    <div className="before-buttons" role="group" aria-label="Before and after">
      <button
        type="button"
        className="button frame-toggle before-hold"
        aria-pressed={sees}
        aria-disabled={!hasBefore}
        title={kept ? 'Hold to see the Frame as it was kept' : 'Hold to see the Frame before your last change'}
        onPointerDown={(event) => {
          if (event.button !== 0) return
          event.currentTarget.setPointerCapture(event.pointerId)
          see(true)
        }}
        onPointerUp={() => see(false)}
        onPointerCancel={() => see(false)}
        onContextMenu={(event) => event.preventDefault()}
        onKeyDown={(event) => onKey(event, true)}
        onKeyUp={(event) => onKey(event, false)}
        onBlur={() => see(false)}
      >
        Before
      </button>
      <button
        type="button"
        className="button button-bare frame-toggle"
        aria-pressed={kept}
        aria-label="Keep this as Before"
        title={kept ? 'Before is a kept moment: let it go' : 'Keep this as Before'}
        onClick={() => keep(!kept)}
      >
        {kept ? <BookmarkCheck size={15} aria-hidden /> : <Bookmark size={15} aria-hidden />}
      </button>
    </div>
  )
}
