import { useBoard, useBoardStore } from '../../session/useBoard.ts'
import { usePlainWords } from '../client/plainWords.ts'
import { useNotesStore } from '../../notes/useNotes.ts'
import './lock.css'

/** Keeps the look exactly as it is on the board this instant. For everybody: it changes nothing. */
export function ThatOneButton() {
  const board = useBoardStore()
  const store = useNotesStore()
  const isPlain = usePlainWords()
  const isReopened = useBoard((state) => state.reopened !== null)
  return (
    <button
      type="button"
      className="button that-one"
      disabled={isReopened}
      onClick={() => {
        const sent = store.getState().send({ do: 'that-one', lookId: board.getState().lookId, words: '' })
        board.say(sent === null ? 'Not kept' : isPlain ? 'That one is kept as you see it' : 'That one is kept. It stands under Agree, Agreed')
      }}
    >
      That one
    </button>
  )
}
