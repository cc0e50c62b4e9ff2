import { useEffect, useRef } from 'react'
import type { LockView } from '../../notes/engine/locks.ts'
import { YesHere } from '../lock/YesHere.tsx'

/** Before a yes is kept: what it is to, what may go with it, and what is known of the screen. */
export function YesSheet({ view, onLeave }: { readonly view: LockView; readonly onLeave: () => void }) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    heading.current?.focus({ preventScroll: true })
    // Said or left, the reading goes on where the lock is told of.
    return () => {
      requestAnimationFrame(() => document.getElementById('lock-in-words')?.focus({ preventScroll: true }))
    }
  }, [])
  return (
    <section className="client-face-words yes-sheet" aria-labelledby="yes-sheet">
      <h2 id="yes-sheet" ref={heading} tabIndex={-1} className="client-face-heading">Yes to lock {view.lock.number}</h2>
      <p className="client-face-soft">It is kept with your name, the time and what is known of this screen, and cannot be taken back.</p>
      <YesHere view={view} />
      <button type="button" className="button client-face-quiet" onClick={onLeave}>Leave it for now</button>
    </section>
  )
}
