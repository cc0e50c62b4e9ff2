import { useEffect, useRef, type KeyboardEvent } from 'react'
import { useBoard } from '../../session/useBoard.ts'

/** Pressed for longer it is a look back for as long as it is held; a short press stays until the next. */
const HELD_MS = 350

/** The Frame as it was before the last change: held, or from press to press. */
export function BeforeToggle() {
  const hasBefore = useBoard((board) => board.before?.looks[board.lookId] !== undefined)
  const sees = useBoard((board) => board.seesBefore)
  const see = useBoard((board) => board.seeBefore)
  const press = useRef<{ readonly sinceMs: number; readonly sawBefore: boolean } | null>(null)
  useEffect(() => () => see(false), [see])

  function down(atMs: number): void {
    press.current = { sinceMs: atMs, sawBefore: sees }
    see(true)
  }

  function up(atMs: number): void {
    const { sinceMs, sawBefore } = press.current ?? { sinceMs: atMs, sawBefore: true }
    press.current = null
    if (sawBefore || atMs - sinceMs >= HELD_MS) see(false)
  }

  function onKey(event: KeyboardEvent): void {
    if (event.key !== ' ' && event.key !== 'Enter') return
    event.preventDefault()
    if (!event.repeat) see(!sees)
  }

  return (
    <button
      type="button"
      className="button before-hold"
      aria-pressed={sees}
      aria-disabled={!hasBefore}
      title="Press or hold to see the picture before the last change"
      onPointerDown={(event) => {
        if (event.button !== 0) return
        event.currentTarget.setPointerCapture(event.pointerId)
        down(event.timeStamp)
      }}
      onPointerUp={(event) => up(event.timeStamp)}
      onPointerCancel={() => see(false)}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={onKey}
      // Pressed by a machine that reads the screen, without any pointer.
      onClick={(event) => event.detail === 0 && see(!sees)}
    >
      Before
    </button>
  )
}
