import type { Selection } from '../../session/board.ts'
import { useBoard } from '../../session/useBoard.ts'
import { setSheet } from '../../session/pageStore.ts'
import './SetWords.css'

const things = [
  { kind: 'camera', word: 'Camera' },
  { kind: 'subject', word: 'Subject' },
  { kind: 'backdrop', word: 'Backdrop' },
  { kind: 'room', word: 'Room' },
  { kind: 'kit', word: 'Kit' },
] as const satisfies readonly { readonly kind: Selection['kind']; readonly word: string }[]

/** The parts of the set that are not lights, by name; each opens its sheet. */
export function SetWords({ onChosen }: { readonly onChosen?: () => void }) {
  const chosen = useBoard((board) => board.selection?.kind ?? null)
  const select = useBoard((board) => board.select)
  return (
    <nav className="set-words" aria-label="The set">
      {things.map(({ kind, word }) => (
        <button
          key={kind}
          type="button"
          className="button set-words-word"
          aria-pressed={chosen === kind}
          onClick={() => {
            select(chosen === kind ? null : { kind })
            setSheet(chosen === kind ? 'shut' : 'low')
            onChosen?.()
          }}
        >
          {word}
        </button>
      ))}
    </nav>
  )
}
