import { useEffect, useRef } from 'react'
import type { LockView } from '../../notes/engine/locks.ts'
import { useBoardStore } from '../../session/useBoard.ts'
import { InsteadOfYesHere } from '../lock/InsteadOfYesHere.tsx'
import { INSTEAD_OF_YES_WORDS, type InsteadOfYes } from '../lock/notYet.ts'
import { YesHere } from '../lock/YesHere.tsx'

/** What is being said: yes to a lock, or what stands in its way. */
export type Saying =
  | { readonly kind: 'yes'; readonly lockId: string }
  | { readonly kind: InsteadOfYes; readonly lookId: string; readonly lockNumber: number | null }

interface SaySheetProps {
  readonly saying: Saying
  /** The lock that is asked about; null where none asks. */
  readonly asked: LockView | null
  readonly onLeave: () => void
}

/** Where the words were, while something is being said; the picture stays as it is. */
export function SaySheet({ saying, asked, onLeave }: SaySheetProps) {
  const board = useBoardStore()
  const heading = useRef<HTMLHeadingElement>(null)
  const isYes = saying.kind === 'yes'

  useEffect(() => {
    if (isYes) heading.current?.focus({ preventScroll: true })
    // Said or left, the focus goes back to the button; to what is told of the lock where the button has gone.
    return () => {
      requestAnimationFrame(() => document.querySelector<HTMLElement>(`[data-says="${saying.kind}"], #lock-in-words`)?.focus({ preventScroll: true }))
    }
  }, [isYes, saying.kind])

  return (
    <section className="client-face-words say-sheet" aria-labelledby="say-sheet">
      <div className="say-sheet-head">
        <h2 id="say-sheet" ref={heading} tabIndex={-1} className="client-face-heading">
          {saying.kind === 'yes' ? `Yes to lock ${asked?.lock.number ?? ''}` : INSTEAD_OF_YES_WORDS[saying.kind]}
        </h2>
        {isYes && <button type="button" className="button" onClick={onLeave}>Leave it for now</button>}
      </div>
      {saying.kind === 'yes' ? asked !== null && (
        <>
          <p className="client-face-soft">Kept with your name, the time and this screen’s check. It cannot be taken back.</p>
          <YesHere view={asked} />
        </>
      ) : (
        <>
          <p className="client-face-soft">It becomes a note on the whole look, which everybody reads.</p>
          <InsteadOfYesHere
            kind={saying.kind}
            about={saying}
            onDone={(wasSaid) => {
              if (wasSaid) board.say('It stands among the notes of the look')
              onLeave()
            }}
          />
        </>
      )}
    </section>
  )
}
