import { NotesButton } from '../../notes/pencil/NotesButton.tsx'
import { PencilToggle } from '../../notes/pencil/PencilToggle.tsx'
import { INSTEAD_OF_YES_WORDS, type InsteadOfYes } from '../lock/notYet.ts'
import { ThatOneButton } from '../lock/ThatOneButton.tsx'
import { BeforeToggle } from './BeforeToggle.tsx'

interface ClientButtonsProps {
  /** Whether there is something to say yes to. */
  readonly isAsked: boolean
  readonly onSay: (kind: 'yes' | InsteadOfYes) => void
}

/** Everything a client can say or ask to see, in the thumb's reach. Nothing here can change the look. */
export function ClientButtons({ isAsked, onSay }: ClientButtonsProps) {
  return (
    <div className="client-buttons" role="group" aria-label="What you can say">
      <div className="client-buttons-say">
        {isAsked && <button type="button" className="button button-main" data-says="yes" onClick={() => onSay('yes')}>Yes…</button>}
        {(Object.keys(INSTEAD_OF_YES_WORDS) as InsteadOfYes[]).map((kind) => (
          <button key={kind} type="button" className="button button-lined" data-says={kind} onClick={() => onSay(kind)}>{INSTEAD_OF_YES_WORDS[kind]}</button>
        ))}
      </div>
      <div className="client-buttons-see">
        <BeforeToggle />
        <PencilToggle />
        <ThatOneButton />
        <NotesButton />
      </div>
    </div>
  )
}
