import { ask } from '../../session/pageStore.ts'
import { ownScreenCheck } from '../../notes/engine/locks.ts'
import { useNotes } from '../../notes/useNotes.ts'

/** The check of this person's screen that counts now; null before any. */
export function useOwnScreenCheck(): string | null {
  return useNotes((notes) => ownScreenCheck(notes.kept, notes.seat.seatId)?.id ?? null)
}

/** Says that colours are judged on a screen nobody has looked at, and leads to looking at it; nothing where one has. */
export function ScreenUnchecked({ words }: { readonly words: string }) {
  if (useOwnScreenCheck() !== null) return null
  return (
    <p className="agreed-row agreed-soft">
      <span>{words}</span>
      <button type="button" className="button button-lined" onClick={() => ask({ kind: 'screen-check' })}>Check it</button>
    </p>
  )
}
