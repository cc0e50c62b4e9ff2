import type { MouseEvent } from 'react'
import { beginNote } from '../../notes/pencil/pencilStore.ts'
import { NotesButton } from '../../notes/pencil/NotesButton.tsx'
import { PencilToggle } from '../../notes/pencil/PencilToggle.tsx'
import { useBoardStore } from '../../session/useBoard.ts'
import { ThatOneButton } from '../lock/ThatOneButton.tsx'
import { BeforeToggle } from './BeforeToggle.tsx'

interface ClientButtonsProps {
  /** Null while there is nothing to say yes to. */
  readonly onYes: (() => void) | null
  readonly isSayingYes: boolean
}

/** Of the composer, so that it stands over the buttons. */
const COMPOSER_ABOVE_PIXELS = 190

/** Everything a client can say or ask to see, in the thumb's reach. Nothing here can change the look. */
export function ClientButtons({ onYes, isSayingYes }: ClientButtonsProps) {
  const board = useBoardStore()

  /** A note on the look as a whole, begun with words. */
  const begin = (as: { readonly title: string; readonly words: string; readonly placeholder: string }) => (event: MouseEvent) => {
    const { x, y } = event.currentTarget.getBoundingClientRect()
    beginNote({ lookId: board.getState().lookId, pin: { on: 'look' }, colour: null, byKeys: event.detail === 0, clientX: x, clientY: y - COMPOSER_ABOVE_PIXELS, as })
  }

  return (
    <div className="client-buttons" role="group" aria-label="What you can say">
      <div className="client-buttons-say">
        {onYes !== null && <button type="button" className="button button-main" aria-expanded={isSayingYes} onClick={onYes}>Yes…</button>}
        <button type="button" className="button button-lined" onClick={begin({ title: 'Not yet', words: 'Not yet: ', placeholder: 'What is missing?' })}>Not yet</button>
        <button type="button" className="button button-lined" onClick={begin({ title: 'Your question on this look', words: '', placeholder: 'Could it be…?' })}>Question</button>
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
